import { Table, TableBody, TableCell, TableHeader, TableHeaderCell, TableRow } from '@fluentui/react-components';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { DieStrip } from '../../sheets/analysis/dieStrips';
import { deviationText } from '../../sheets/analysis/diameterText';
import { dayText } from '../../sheets/analysis/sinceText';
import { useTableStyles } from '../controls/tableStyles';
import { Scroller } from '../controls/Scroller';

const WORDS = { DIE: ': off by itself', 'WITH THE MACHINE': '', 'CANNOT TELL': ': cannot tell yet' } as const;

/** What the picture of dies shows, in numbers and words. */
export function DieTable({ dies, unit }: { readonly dies: readonly DieStrip[]; readonly unit: LengthUnit }) {
  const styles = useTableStyles();
  return (
    <Scroller>
      <Table size="small" aria-label="Deviations by die" className={styles.table}>
        <TableHeader>
          <TableRow>
            <TableHeaderCell className={styles.wide}>Die</TableHeaderCell>
            <TableHeaderCell className={styles.number}>Crimps</TableHeaderCell>
            <TableHeaderCell className={styles.number}>Its own ({unit})</TableHeaderCell>
          </TableRow>
        </TableHeader>
        <TableBody>
          {dies.map(({ name, crimps, cause }) => (
            <TableRow key={name}>
              <TableCell className={styles.wide}>
                {name}
                {cause && WORDS[cause.finding]}
                {cause?.since && `, since ${dayText(cause.since.crimp)}`}
              </TableCell>
              <TableCell className={styles.number}>{crimps.length}</TableCell>
              <TableCell className={styles.number}>
                {cause?.offset === undefined ? '–' : deviationText(cause.offset, unit, true)}
              </TableCell>
            </TableRow>
          ))}
        </TableBody>
      </Table>
    </Scroller>
  );
}
