import {
  Caption1,
  Subtitle2,
  Table,
  TableBody,
  TableCell,
  TableHeader,
  TableHeaderCell,
  TableRow,
} from '@fluentui/react-components';
import { useMemo } from 'react';
import type { JudgedCrimp } from '../../sheets/analysis/analyseReadings';
import { CAPABILITY_WORDS, capabilityOf } from '../../sheets/analysis/capabilityOf';
import { indexText } from '../../sheets/analysis/diameterText';
import { useTableStyles } from '../controls/tableStyles';

/** Capability with its 95 % interval. */
export function CapabilityTable({ crimps, tolerance }: { readonly crimps: readonly JudgedCrimp[]; readonly tolerance: number }) {
  const styles = useTableStyles();
  const found = useMemo(() => capabilityOf(crimps, tolerance), [crimps, tolerance]);
  if ('reason' in found) return <Caption1>No capability: {found.reason}.</Caption1>;
  const shown = (value: number | undefined) => (value === undefined ? '–' : indexText(value));
  return (
    <>
      <Subtitle2 as="h3">Capability</Subtitle2>
      <Table size="small" aria-label="Capability" className={styles.table}>
        <TableHeader>
          <TableRow>
            <TableHeaderCell className={styles.wide}>Index</TableHeaderCell>
            <TableHeaderCell className={styles.number}>Value</TableHeaderCell>
            <TableHeaderCell className={styles.number}>95 % from</TableHeaderCell>
            <TableHeaderCell className={styles.number}>to</TableHeaderCell>
          </TableRow>
        </TableHeader>
        <TableBody>
          {found.indices.map(({ index, value, low, high }) => (
            <TableRow key={index}>
              <TableCell className={styles.wide}>
                {index}, {CAPABILITY_WORDS[index]}
              </TableCell>
              <TableCell className={styles.number}>{shown(value)}</TableCell>
              <TableCell className={styles.number}>{shown(low)}</TableCell>
              <TableCell className={styles.number}>{shown(high)}</TableCell>
            </TableRow>
          ))}
        </TableBody>
      </Table>
      <Caption1>
        1.00: three sigma on either side just fit the tolerance; more is better. With {crimps.length} crimps the true value lies
        somewhere in the interval.
      </Caption1>
    </>
  );
}
