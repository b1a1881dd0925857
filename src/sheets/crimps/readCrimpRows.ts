import type { Catalogue } from '../../core/catalogue/catalogue';
import { lengthIn, lengthUnitOf, type LengthUnit } from '../../core/units/lengthUnit';
import type { Decimal } from '../../core/units/decimal';
import { addressOf } from '../../workbook/a1';
import type { Workbook } from '../../workbook/workbook';
import type { ColumnRead } from '../table/columnsRead';
import type { TableQuestion } from '../table/tableQuestion';
import { tableRows, type LeftOutRow, type ReadReport } from '../table/tableRows';
import { unchangedRows } from '../table/unchangedRows';
import { crimpCells, goesOnBelow } from './crimpCells';
import { readCrimpRow } from './readCrimpRow';
import { isMeasured, isUnmeasured, measuredCrimp, type CrimpRow, type MeasuredCrimp } from './crimpRow';
import { isReadingRole, type CrimpField, type CrimpRole } from './crimpRoles';
import { NO_OPTIONS, type CrimpReadOptions } from './crimpReadOptions';
import { reach, readCrimpSheet, type CrimpChoice, type CrimpSheet } from './crimpSheet';
import { readingsIn, type CrimpTable } from './crimpTable';
import { sampleRows } from './readingColumns';

/** The crimps of a sheet, and what was left out of it. */
export interface CrimpReading {
  readonly sheet: string;
  /** In the order of the sheet, both ends of a row one after the other. */
  readonly rows: readonly CrimpRow[];
  /** The tables that were read; none where the sheet has no readings. */
  readonly tables: readonly CrimpTable[];
  /** Rows that are no crimps, or were not meant. */
  readonly leftOut: readonly LeftOutRow[];
  readonly questions: readonly TableQuestion[];
  /** Sentences about what is stated above the tables. */
  readonly notes: readonly string[];
  /** Unit of the first table's readings. */
  readonly unit: LengthUnit;
  /** Expanded uncertainty that is stated above the first table, in `unit`. */
  readonly uncertainty: Decimal | undefined;
  readonly catalogue: Catalogue | undefined;
}

const NAMES: readonly CrimpField[] = ['combination', 'hose', 'fitting', 'target', 'line', 'crimp', 'assembly', 'piece'];

function keysOf({ columns }: CrimpTable): number[] {
  const readings = Object.entries(columns).flatMap(([role, column]) =>
    column !== undefined && isReadingRole(role) ? [column] : [],
  );
  return [...readings, ...[...NAMES, 'fittingA' as const, 'fittingB' as const].flatMap(role => columns[role] ?? [])];
}

/** A row that is yet to be filled in says nothing of a crimp unless it names its parts or its target. */
const isCrimp = (row: CrimpRow) =>
  !isUnmeasured(row) || row.combination !== '' || (row.target?.from.startsWith('column') ?? false);

const unchanged = unchangedRows<CrimpRow>();

/** All that a crimp's row takes from its table. */
const knownOf = ({ reader, above, bareLimits, machineAbove, unit, likelyUnit, layout, readings }: CrimpTable) => [
  reader.known,
  above,
  bareLimits,
  machineAbove,
  unit?.symbol,
  likelyUnit.symbol,
  layout,
  readings,
];

function readTable(
  { cells, chosen, catalogue }: CrimpSheet,
  source: CrimpTable,
  options: CrimpReadOptions,
): { readonly rows: readonly CrimpRow[]; readonly leftOut: readonly LeftOutRow[] } {
  const { columns } = source;
  const goesOn = new Set(goesOnBelow(cells, source.table, source));
  const rules = { name: columns.hose ?? columns.combination, keys: keysOf(source), takesHidden: true };
  const lines: number[] = [];
  const leftOut: LeftOutRow[] = [];
  for (const { row, kind } of tableRows(cells, source.table, rules)) {
    if (chosen && !chosen.has(row)) continue;
    const isTaken = kind === 'line' || (kind === 'below' && (goesOn.has(row) || chosen || options.take?.has('below')));
    if (isTaken) lines.push(row);
    else leftOut.push({ row: row + 1, reason: kind });
  }
  const { readingsACrimp, machine, typed } = options;
  const rowByRow = unchanged(cells, JSON.stringify([knownOf(source), readingsACrimp, machine, typed]), catalogue);
  const rows = crimpCells(cells, lines, source, readingsACrimp).map(crimp => {
    const read = () => readCrimpRow(source, crimp, options, catalogue);
    return source.layout === 'column' ? read() : rowByRow(crimp.row, crimp.end, read);
  });
  return { rows: rows.filter(isCrimp), leftOut };
}

/** Crimps of other tables on the sheet that were not meant. */
function elsewhere(sheet: CrimpSheet, meant: readonly CrimpTable[], options: CrimpReadOptions): LeftOutRow[] {
  if (sheet.chosen) return [];
  return sheet.tables
    .filter(table => !meant.includes(table))
    .flatMap(table =>
      readTable(sheet, table, options).rows.flatMap(({ rows }) =>
        rows.map((row): LeftOutRow => ({ row, reason: 'below', sentence: `in the table ${addressOf(table.table.block)}` })),
      ),
    )
    .filter(({ row }, index, all) => all.findIndex(each => each.row === row) === index);
}

/** The tables that are read: those with chosen rows, else the one that is meant, else all where all are taken. */
function meantTables(sheet: CrimpSheet, own: CrimpTable, { take }: CrimpReadOptions): readonly CrimpTable[] {
  const { chosen, tables } = sheet;
  if (!chosen) return take?.has('below') ? tables : [own];
  return tables.filter(table => {
    const { row, rows } = reach(table);
    return [...chosen].some(each => each > row && each < row + rows);
  });
}

/** The crimps of a sheet: of the table that is meant, and of the others where they are taken, too. */
export function crimpRowsOf(sheet: CrimpSheet, options: CrimpReadOptions = NO_OPTIONS): CrimpReading {
  const { own } = sheet;
  const has = own && readingsIn(own) > 0;
  const tables = has ? meantTables(sheet, own, options) : [];
  const read = tables.map(table => readTable(sheet, table, options));
  const asked = read.flatMap(({ rows }) => rows.flatMap(({ problem }) => problem?.question ?? []));
  const first = tables[0];
  const said = first?.unit ?? own?.likelyUnit;
  const unit = said ? lengthUnitOf(said) : 'mm';
  const uncertainty = first?.above.lengths.uncertainty;
  return {
    sheet: sheet.sheet,
    rows: read.flatMap(({ rows }) => rows),
    tables,
    leftOut: [...read.flatMap(({ leftOut }) => leftOut), ...(has ? elsewhere(sheet, tables, options) : [])],
    questions: [
      ...tables.flatMap(({ questions }) => questions),
      ...new Map(asked.map(question => [question.column, question])).values(),
    ],
    notes: tables.flatMap(({ above, notes }) => [...above.problems, ...notes]),
    unit,
    uncertainty: uncertainty && lengthIn(uncertainty, unit),
    catalogue: sheet.catalogue,
  };
}

/** Reads the crimps around the selection, or of a choice; undefined where the sheet is blank. */
export async function readCrimpRows(
  workbook: Workbook,
  options: CrimpReadOptions = NO_OPTIONS,
  choice?: CrimpChoice,
): Promise<CrimpReading | undefined> {
  const sheet = await readCrimpSheet(workbook, choice);
  return sheet && sheet.own && crimpRowsOf(sheet, options);
}

const NAMELESS = 'it names no hose, coupling or combination: fill that in';

/** Why a crimp that has readings cannot be analysed; undefined where it can, or is not measured yet. */
export function whyNotAnalysed(row: CrimpRow): { readonly sentence: string; readonly at: string } | undefined {
  if (isUnmeasured(row)) return undefined;
  const isNameless = row.isNamed && row.combination === '';
  return row.problem ?? row.readingProblem ?? (isNameless ? { sentence: NAMELESS, at: row.cells[0]!.address } : undefined);
}

/** The crimps that are measured, in one unit. */
export const measuredCrimps = ({ rows }: CrimpReading, unit: LengthUnit): readonly MeasuredCrimp[] =>
  rows.filter(row => isMeasured(row) && !whyNotAnalysed(row)).map(row => measuredCrimp(row, unit));

/**
 * What was read, for the note of a view.
 * @param why says why a view leaves a crimp out
 */
export function crimpReport(
  reading: CrimpReading,
  why: (row: CrimpRow) => { sentence: string; at: string } | undefined,
): ReadReport {
  const problems = reading.rows.flatMap((row): LeftOutRow[] => {
    const found = why(row);
    return found ? [{ row: Number(/\d+$/.exec(found.at)?.[0] ?? row.row), reason: 'problem', ...found }] : [];
  });
  const taken = new Set(reading.rows.filter(row => !why(row)).flatMap(({ rows }) => rows));
  return {
    sheet: reading.sheet,
    tables: reading.tables.map(({ table }) => addressOf(table.block)),
    taken: [...taken].sort((a, b) => a - b),
    leftOut: [...problems, ...reading.leftOut],
  };
}

/** The columns of a table as they were read; readings are one kind, whatever their number. */
export function crimpColumnsRead({ table, columns, reader }: CrimpTable): readonly ColumnRead[] {
  const roles = new Map((Object.entries(columns) as [CrimpRole, number][]).map(([role, column]) => [column, role]));
  const isBlank = (column: number) => [table.block.row, ...sampleRows(table)].every(row => reader.cells.isEmpty(row, column));
  return table.headings.flatMap((heading, index): ColumnRead[] => {
    const column = table.block.column + index;
    const role = roles.get(column);
    const kind = role && isReadingRole(role) ? role.replace(/\d+$/, '') : role;
    return role === undefined && isBlank(column) ? [] : [{ column, heading, role: kind }];
  });
}
