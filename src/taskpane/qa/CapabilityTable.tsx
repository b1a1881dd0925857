import {
  Body1,
  Caption1,
  MessageBar,
  MessageBarBody,
  Subtitle2,
  Table,
  TableBody,
  TableCell,
  TableHeader,
  TableHeaderCell,
  TableRow,
} from '@fluentui/react-components';
import { useMemo } from 'react';
import type { CombinationReadings, MachineReadings } from '../../sheets/analysis/analyseReadings';
import { CAPABILITY_WORDS, capabilityOf, capabilityOfAll } from '../../sheets/analysis/capabilityOf';
import {
  allCapabilityText,
  allRows,
  capabilityWarning,
  oneCapabilityText,
  type CapabilityRow,
} from '../../sheets/analysis/capabilityText';
import { indexText } from '../../sheets/analysis/diameterText';
import { useTableStyles } from '../controls/tableStyles';
import { Scroller } from '../controls/Scroller';

interface Props {
  readonly machine: MachineReadings;
  /** The combination that is looked at; undefined = all. */
  readonly only: CombinationReadings | undefined;
}

interface Shown {
  readonly rows: readonly CapabilityRow[];
  readonly text: string;
}

function shownOf(machine: MachineReadings, only: CombinationReadings | undefined): Shown | { readonly reason: string } {
  if (!only) {
    const all = capabilityOfAll(machine);
    return 'reason' in all ? all : { rows: allRows(all), text: allCapabilityText(all) };
  }
  const { counted, name, crimps } = only;
  const found = capabilityOf(counted, crimps[0]!.tolerance.toNumber());
  if ('reason' in found) return found;
  const rows = found.indices.map(each => [`${each.index}, ${CAPABILITY_WORDS[each.index]}`, each] as const);
  return { rows, text: oneCapabilityText(name, found.indices) };
}

/** Capability with its 95 % interval, what it means in the shop, and when it means little. */
export function CapabilityTable({ machine, only }: Props) {
  const styles = useTableStyles();
  const found = useMemo(() => shownOf(machine, only), [machine, only]);
  const warning = useMemo(() => capabilityWarning(machine, only), [machine, only]);
  if ('reason' in found) return <Caption1>No capability: {found.reason}.</Caption1>;
  const shown = (value: number | undefined) => (value === undefined ? '–' : indexText(value));
  const count = (only ? only.counted : machine.counts.present).length;
  return (
    <>
      <Subtitle2 as="h3">Capability {only ? `of ${only.name}` : 'of all combinations'}</Subtitle2>
      {warning && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{warning}</MessageBarBody>
        </MessageBar>
      )}
      <Scroller>
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
            {found.rows.map(([label, { value, low, high }]) => (
              <TableRow key={label}>
                <TableCell className={styles.wide}>{label}</TableCell>
                <TableCell className={styles.number}>{shown(value)}</TableCell>
                <TableCell className={styles.number}>{shown(low)}</TableCell>
                <TableCell className={styles.number}>{shown(high)}</TableCell>
              </TableRow>
            ))}
          </TableBody>
        </Table>
      </Scroller>
      <Body1>{found.text}</Body1>
      <Caption1>
        1.00: three sigma on either side just fit the tolerance; more is better. With {count} crimps the true value lies somewhere
        in the interval.{only ? '' : ' Choose one combination above to see its own.'}
      </Caption1>
    </>
  );
}
