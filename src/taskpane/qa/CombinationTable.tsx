import { Table, TableBody, TableCell, TableHeader, TableHeaderCell, TableRow } from '@fluentui/react-components';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CombinationReadings } from '../../sheets/analysis/analyseReadings';
import { deviationText } from '../../sheets/analysis/diameterText';
import { useTableStyles } from '../controls/tableStyles';
import { Scroller } from '../controls/Scroller';

interface Props {
  readonly combinations: readonly CombinationReadings[];
  readonly unit: LengthUnit;
}

const WORDS: Readonly<Record<CombinationReadings['cause']['finding'], string>> = {
  'OWN SETTING': ': own setting off',
  'WITH THE DIE': ': off with its die',
  'WITH THE MACHINE': '',
  'CANNOT TELL': ': cannot tell yet',
  'NOT COUNTED': ': not crimped since the last change',
};

/** What the strip picture shows, in numbers and words. */
export function CombinationTable({ combinations, unit }: Props) {
  const styles = useTableStyles();
  const outOf = ({ crimps }: CombinationReadings) => crimps.filter(({ verdict }) => verdict !== 'IN SPEC').length;
  return (
    <Scroller>
      <Table size="small" aria-label="Deviations by combination" className={styles.table}>
        <TableHeader>
          <TableRow>
            <TableHeaderCell className={styles.wide}>Combination</TableHeaderCell>
            <TableHeaderCell className={styles.number}>Crimps</TableHeaderCell>
            <TableHeaderCell className={styles.number}>Not in spec</TableHeaderCell>
            <TableHeaderCell className={styles.number}>Mean ({unit})</TableHeaderCell>
          </TableRow>
        </TableHeader>
        <TableBody>
          {combinations.map(combination => {
            const { name, crimps, counted, mean, cause } = combination;
            const earlier = crimps.length - counted.length;
            return (
              <TableRow key={name}>
                <TableCell className={styles.wide}>
                  {name}
                  {WORDS[cause.finding]}
                  {earlier > 0 && counted.length > 0 ? ` (${earlier} at an earlier setting, not in the mean)` : ''}
                </TableCell>
                <TableCell className={styles.number}>{crimps.length}</TableCell>
                <TableCell className={styles.number}>{outOf(combination)}</TableCell>
                <TableCell className={styles.number}>{mean ? deviationText(mean, unit, true) : '–'}</TableCell>
              </TableRow>
            );
          })}
        </TableBody>
      </Table>
    </Scroller>
  );
}
