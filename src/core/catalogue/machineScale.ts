import { partKey } from './partName';
import type { ReadRow } from './readRows';
import { addProblem, numberIn, quotedValue, textIn } from './rowFacts';
import { machinesTable } from './tables/machinesTable';

const day = (row: ReadRow) => numberIn(row, 'date') ?? -1;
const describes = (row: ReadRow) => row.values.hose === undefined && row.values.fitting === undefined;
const keyOf = (row: ReadRow, key: string) => partKey(textIn(row, key) ?? '');

/** Describing rows by machine and die, newest first, of one time the lower row first. */
function scales(rows: readonly ReadRow[]): Map<string, ReadRow> {
  const found = new Map<string, ReadRow>();
  for (const row of rows) {
    if (row.problems.length > 0 || !describes(row)) continue;
    const key = `${keyOf(row, 'machine')}\u001f${keyOf(row, 'die')}`;
    const other = found.get(key);
    if (!other || day(row) >= day(other)) found.set(key, row);
  }
  return found;
}

/** Adds a problem to each recorded dial that its machine's scale does not have: such a record would set the machine to nonsense. */
export function refuseDialsOffScale(rows: readonly ReadRow[]): void {
  const found = scales(rows);
  for (const row of rows) {
    const dial = numberIn(row, 'dial');
    if (row.problems.length > 0 || describes(row) || dial === undefined) continue;
    const machine = keyOf(row, 'machine');
    const scale = found.get(`${machine}\u001f${keyOf(row, 'die')}`) ?? found.get(`${machine}\u001f`);
    if (!scale) continue;
    const [lowest, highest] = [numberIn(scale, 'lowest'), numberIn(scale, 'highest')];
    if ((lowest === undefined || dial >= lowest) && (highest === undefined || dial <= highest)) continue;
    addProblem(
      machinesTable,
      row,
      'dial',
      quotedValue(dial),
      `on the machine's scale, ${lowest ?? '…'} … ${highest ?? ''}`.trim(),
    );
  }
}
