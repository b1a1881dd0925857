import type { RawCell, RawTable } from '../../core/catalogue/rawTable';
import { dayNumber } from '../../core/units/sheetDate';
import { readHeadings, type TableColumn, type Headings } from '../../core/catalogue/headings';
import { partKey } from '../../core/catalogue/partName';
import { machinesTable } from '../../core/catalogue/tables/machinesTable';
import { blockOf, type Block } from '../../workbook/a1';
import { callsCatalogue, catalogueReferences } from '../../workbook/catalogueFormula';
import { tablePlaces } from '../../workbook/tablePlaces';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { rawCell } from './rawCell';

/** What a formula needs to know of a machine besides its name. */
export type DialField = 'step' | 'lowest' | 'highest' | 'largestMove';
export const MACHINE_FIELDS: readonly DialField[] = ['step', 'lowest', 'highest', 'largestMove'];

/** The row of the table Machines that describes a machine. */
export interface MachineRow {
  readonly name: string;
  /** Zero-based row of the sheet. */
  readonly row: number;
  readonly states: ReadonlySet<DialField>;
  /** No row above it names the machine, so that a look-up by name meets this one. */
  readonly isFirst: boolean;
}

/** Where the table Machines stands, and the rows in it that describe machines. */
export interface MachineRows {
  readonly sheet: string;
  /** Rows below the headings. */
  readonly body: Block;
  /** Zero-based columns of the sheet. */
  readonly columns: Readonly<Partial<Record<DialField | 'machine', number>>>;
  /** Unit of the heading Step. */
  readonly stepUnit: string | undefined;
  readonly machines: readonly MachineRow[];
}

interface Described extends MachineRow {
  readonly date: number;
}

/** A row that describes a machine for all dies: its newest counts. */
function describedIn(content: RangeContent, table: RawTable, { row: head, columns }: Headings): Map<string, Described> {
  const column = (key: string): TableColumn | undefined => columns.find(each => each.key === key);
  const cell = (row: number, key: string): RawCell => table[row]?.[column(key)?.index ?? -1] ?? null;
  const named = new Set<string>();
  const newest = new Map<string, Described>();
  for (let row = head + 1; row < table.length; row += 1) {
    const name = cell(row, 'machine');
    if (name === null || typeof name === 'object' || String(name).trim() === '') continue;
    const key = partKey(String(name));
    const isFirst = !named.has(key);
    named.add(key);
    if (['hose', 'fitting', 'die'].some(each => cell(row, each) !== null)) continue;
    const date = cell(row, 'date');
    const day = (typeof date === 'string' || typeof date === 'number' ? dayNumber(date) : undefined) ?? -1;
    if ((newest.get(key)?.date ?? -2) >= day) continue;
    const states = new Set(MACHINE_FIELDS.filter(field => typeof cell(row, field) === 'number'));
    newest.set(key, { name: String(name).trim(), row: content.row + row, states, isFirst, date: day });
  }
  return newest;
}

/** Rows up to which the range that the catalogue takes is looked up whole, machines to come included. */
const MOST_ROWS = 5000;

function rowsIn(content: RangeContent, asked: Block | undefined): MachineRows | undefined {
  const table: RawTable = content.values.map(row => row.map(rawCell));
  const headings = readHeadings(machinesTable, table);
  const place = (key: string) => {
    const found = headings.columns.find(column => column.key === key);
    return found && content.column + found.index;
  };
  const columns = Object.fromEntries(
    ['machine', ...MACHINE_FIELDS].flatMap(key => (place(key) === undefined ? [] : [[key, place(key)]])),
  );
  const machines = [...describedIn(content, table, headings).values()].filter(({ states }) => states.has('step'));
  if (machines.length === 0) return undefined;
  const first = content.row + headings.row + 1;
  const filled = content.row + content.values.length - 1;
  const last = asked && asked.rows <= MOST_ROWS ? asked.row + asked.rows - 1 : filled;
  return {
    sheet: content.sheet,
    body: { row: first, column: content.column, rows: last - first + 1, columns: content.values[0]!.length },
    columns,
    stepUnit: headings.columns.find(({ key }) => key === 'step')?.unit?.symbol,
    machines,
  };
}

/** Where the table Machines of the `Catalogue` cell's formula describes the machines; undefined where it cannot be followed or does not. */
export async function machineRows(workbook: Workbook): Promise<MachineRows | undefined> {
  const names = await workbook.names();
  const at = names.find(({ name }) => name.toLowerCase() === 'catalogue')?.at;
  if (!at || !blockOf(at.address)) return undefined;
  const [cell] = await workbook.read([at]);
  const formula = cell?.formulas[0]?.[0];
  const reference = callsCatalogue(formula) ? catalogueReferences(formula, at.sheet)?.[3] : undefined;
  const [range] = reference ? await tablePlaces(workbook, [reference]) : [];
  if (!range) return undefined;
  try {
    const [content] = await workbook.read([range]);
    return content && rowsIn(content, blockOf(range.address));
  } catch {
    // A table without its headings: the Catalogue cell says so itself.
    return undefined;
  }
}
