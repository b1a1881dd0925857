import { splitHeading } from '../units/headingUnit';
import { headingKey, partKey } from './partName';
import type { ReadRow } from './readRows';
import { catalogueTables, type TableName } from './tables/catalogueTables';

const SEPARATOR = '\u001f';

const part = (row: ReadRow, key: string) => partKey(String(row.values[key] ?? ''));
const joined =
  (...keys: string[]) =>
  (row: ReadRow) =>
    keys.map(key => part(row, key)).join(SEPARATOR);

/** A rate's name as it is compared: without brackets, case, blanks and hyphens. */
export const rateKey = (name: string) => headingKey(splitHeading(name).name);

/** What must differ between the rows of a table. */
const KEYS: Record<TableName, (row: ReadRow) => string> = {
  hoses: joined('hose'),
  fittings: joined('fitting'),
  crimps: joined('hose', 'fitting'),
  machines: joined('machine', 'die', 'hose', 'fitting', 'date'),
  rates: row => rateKey(String(row.values.rate ?? '')),
  dies: joined('die'),
  guards: joined('guard', 'size'),
  derating: joined('hose', 'temperature'),
  fluids: joined('fluid', 'hose'),
};

/** The column where a duplicate is reported. */
const SHOWN: Record<TableName, string> = {
  hoses: 'hose',
  fittings: 'fitting',
  crimps: 'fitting',
  machines: 'date',
  rates: 'rate',
  dies: 'die',
  guards: 'guard',
  derating: 'temperature',
  fluids: 'fluid',
};

/** Adds a problem to all rows that say the same thing twice; rows whose key could not be read are passed over. */
export function markDuplicates(name: TableName, rows: readonly ReadRow[]): void {
  const groups = new Map<string, ReadRow[]>();
  const key = KEYS[name];
  for (const row of rows) {
    if ((row.problems.length > 0 && !hasKey(name, row)) || isRecord(name, row)) continue;
    const found = key(row);
    const group = groups.get(found);
    if (group) group.push(row);
    else groups.set(found, [row]);
  }
  const { sheet, fields } = catalogueTables[name];
  const column = SHOWN[name];
  const heading = (fields as Record<string, { heading: string }>)[column]!.heading;
  for (const group of groups.values()) {
    if (group.length < 2) continue;
    for (const row of group) {
      const others = group.filter(other => other !== row).map(other => other.row);
      const received = `the same as in row ${others.slice(0, 5).join(', ')}${others.length > 5 ? ', …' : ''}`;
      row.problems.push({ sheet, row: row.row, column: heading, received, expected: 'one row only' });
    }
  }
}

/** A machine's recorded setting: two of one date are no mistake, the lower row counts. */
const isRecord = (name: TableName, row: ReadRow) =>
  name === 'machines' && ['hose', 'fitting'].some(key => row.values[key] !== undefined || row.unread?.[key]);

function hasKey(name: TableName, row: ReadRow): boolean {
  if (name === 'machines') return row.values.machine !== undefined && !row.unread?.date && !row.unread?.die;
  if (name === 'derating') return row.values.hose !== undefined && row.values.temperature !== undefined;
  if (name === 'crimps') return row.values.hose !== undefined && row.values.fitting !== undefined;
  return row.values[SHOWN[name]] !== undefined;
}
