import { typedNumber } from '../../cells/typedNumber';
import { READ_PLACES } from '../../core/units/decimalPlaces';
import { dayNumber } from '../../core/units/sheetDate';
import type { Decimal } from '../../core/units/decimal';
import type { CellValue, RangeContent, Workbook } from '../../workbook/workbook';
import { appendRows, type Appended, type GrowingColumn } from '../print/appendRows';
import { plainHeading } from '../table/heading';
import type { WrittenCell } from '../print/sheetWriter';
import type { Piece } from '../pieces/piece';
import type { InspectionRecord, RecordCrimp, RecordOptions } from './inspectionRecord';
import { proofPressure, readingCount } from './recordFacts';
import { fieldsWithProof } from './recordProof';
import { RECORDS_SHEET } from '../table/recordsSheet';
import { DATE_FORMAT } from '../print/dateFormat';

/** A heading's words; units in brackets do not matter. */
const headingOfCell = (cell: CellValue): string => (typeof cell === 'string' ? plainHeading(cell) : '');

const READING = /^reading (\d+)$/;
const number = (value: Decimal | undefined, places: number = READ_PLACES): WrittenCell =>
  value?.toDecimalPlaces(places).toNumber() ?? '';
const date = (text: string): WrittenCell => dayNumber(text) ?? text;

interface Row {
  readonly record: InspectionRecord;
  readonly crimp: RecordCrimp;
  readonly options: RecordOptions;
}

/** The piece that a crimp is of, where the record is from the sheet Pieces. */
const pieceOf = ({ pieces = [] }: InspectionRecord, { piece }: RecordCrimp) => pieces.find(each => each.piece === piece);

interface RecordColumn extends GrowingColumn {
  readonly cell: (row: Row) => WrittenCell;
}

const column = (heading: string, width: number, cell: RecordColumn['cell'], format?: string): RecordColumn => ({
  heading,
  width,
  cell,
  ...(format ? { format } : {}),
});

const lengthCell = (piece: Piece | undefined): WrittenCell =>
  piece?.finished ? `${piece.finished.value} ${piece.finished.unit.symbol}` : '';

/** What is said of the crimp's own piece, else what is typed for all. */
const own = ({ record, crimp, options: { fields } }: Row) => {
  const piece = pieceOf(record, crimp);
  return fieldsWithProof(record, fields, piece ? [piece] : [], crimp.measuredWith ? [crimp.measuredWith] : []);
};

/** The columns of the sheet, with one for each of so many readings. */
const columnsFor = (readings: number): readonly RecordColumn[] => [
  column('Date', 70, ({ options }) => date(options.today), DATE_FORMAT),
  column('Line', 40, ({ record }) => record.line),
  column('Order', 70, ({ record, crimp }) => crimp.order || record.order),
  column('Assembly', 80, ({ record, crimp }) => crimp.assembly || record.assembly),
  column('Piece', 40, ({ crimp }) => crimp.piece),
  column('End', 34, ({ crimp }) => crimp.end),
  column('Quantity', 50, ({ record }) => (record.quantity ? Number(record.quantity) : '')),
  column('Hose', 100, ({ record, crimp }) => crimp.hose || record.hose),
  column('Hose lot', 70, ({ crimp, options }) => crimp.hoseLot || options.fields.hoseLot),
  column('Hose made', 70, ({ crimp, options }) => date(crimp.hoseMade || options.fields.hoseMade), DATE_FORMAT),
  column('Coupling', 170, ({ crimp }) => crimp.fitting),
  column('Coupling lot', 70, ({ crimp, options }) => crimp.fittingLot || options.fields.fittingLot),
  column('Crimped on', 70, ({ crimp }) => date(crimp.made), DATE_FORMAT),
  column('Operator', 80, ({ crimp, options }) => crimp.operator || options.fields.operator),
  column('Machine', 110, ({ crimp, options }) => crimp.machine || options.fields.machine),
  column('Die set', 50, ({ crimp, options }) => options.fields.dieSet || crimp.die),
  column('Dial', 44, ({ crimp }) => (crimp.dial === '' ? '' : Number(crimp.dial))),
  column('Caliper', 80, row => own(row).caliper),
  column('Caliper calibrated', 76, row => date(own(row).caliperChecked), DATE_FORMAT),
  column('Unit', 34, ({ record }) => record.unit),
  ...Array.from({ length: readings }, (_, index) =>
    column(`Reading ${index + 1}`, 56, ({ crimp }) => number(crimp.readings[index])),
  ),
  column('Mean', 56, ({ crimp }) => number(crimp.mean)),
  column('Target', 56, ({ crimp }) => number(crimp.target)),
  column('Smallest', 56, ({ crimp }) => number(crimp.smallest)),
  column('Largest', 56, ({ crimp }) => number(crimp.largest)),
  column('Spread', 50, ({ crimp }) => number(crimp.spread)),
  column('Verdict', 70, ({ crimp }) => crimp.verdict ?? ''),
  column('Uncertainty U', 60, ({ options }) => typed(options.fields.uncertainty)),
  column('Working pressure', 60, ({ record }) => number(record.workingPressure?.value)),
  column('Proof pressure', 60, ({ record, options }) => number(proofPressure(record, options.fields)?.value)),
  column('Pressure unit', 50, ({ record }) => record.workingPressure?.unit ?? ''),
  column('Proof factor', 50, ({ options }) => typed(options.fields.factor)),
  column('Tested at', 60, ({ record, crimp }) => number(pieceOf(record, crimp)?.testedAt?.value)),
  column('Tested for (s)', 56, ({ record, crimp }) => pieceOf(record, crimp)?.testedFor ?? ''),
  column('Finished length', 60, ({ record, crimp }) => lengthCell(pieceOf(record, crimp))),
  column('Use by', 60, ({ record, crimp }) => pieceOf(record, crimp)?.useBy ?? ''),
  column('Rule from', 110, ({ options }) => options.fields.rule),
  column('Medium', 70, ({ options }) => options.fields.medium),
  column('Gauge', 70, row => own(row).gauge),
  column('Gauge calibrated', 76, row => date(own(row).gaugeChecked), DATE_FORMAT),
  column('Held for', 60, row => own(row).hold),
  column('Leak', 50, ({ options }) => options.result.leak),
  column('Slip', 50, ({ options }) => options.result.slip),
  column('Twist', 50, ({ options }) => options.result.twist),
  column('Tested by', 80, row => own(row).tester),
  column('Catalogue', 160, ({ options }) => options.handle),
  column('From', 120, ({ options }) => options.source),
];

function typed(text: string): WrittenCell {
  return typedNumber(text, 'field').value?.toNumber() ?? text.trim();
}

/** What tells one crimp's row from another's, besides its readings. */
const IDENTITY = ['line', 'order', 'assembly', 'piece', 'end'];

/** A sheet with fewer columns of readings holds blanks in the others. */
function keysOf(headings: readonly string[], rows: readonly (readonly unknown[])[]): string[] {
  const named = IDENTITY.map(name => headings.indexOf(name));
  const readings = Array.from({ length: readingsIn(headings) }, (_, index) => headings.indexOf(`reading ${index + 1}`));
  const text = (cells: readonly unknown[], index: number) => String(index < 0 ? '' : (cells[index] ?? ''));
  return rows.map(cells =>
    [
      ...named.map(index => text(cells, index)),
      readings
        .map(index => text(cells, index))
        .join(' ')
        .trimEnd(),
    ].join('\u001f'),
  );
}

const readingsIn = (headings: readonly string[]) =>
  Math.max(0, ...headings.map(heading => Number(READING.exec(heading)?.[1] ?? 0)));

interface StandingRecords {
  readonly keys: ReadonlySet<string>;
  /** How many readings the sheet has columns for. */
  readonly readings: number;
}

function recordsInSheet(used: RangeContent | undefined): StandingRecords {
  const top = used?.values.findIndex(row => row.some(cell => headingOfCell(cell) === 'reading 1')) ?? -1;
  if (!used || top < 0) return { keys: new Set(), readings: 0 };
  const headings = used.values[top]!.map(headingOfCell);
  return { keys: new Set(keysOf(headings, used.values.slice(top + 1))), readings: readingsIn(headings) };
}

/** Rows to be appended, and how many of the chosen stand there already. */
export interface RecordGrowth {
  readonly appended: Appended | undefined;
  readonly added: number;
  readonly standing: number;
}

/**
 * Plans the rows of the records sheet: one a crimp. A crimp whose row stands there already, with the same readings, is not written
 * twice. Where crimps have more readings than the sheet has columns, it gets more.
 * @throws Error where the sheet holds something else
 */
export async function recordGrowth(
  workbook: Workbook,
  records: readonly InspectionRecord[],
  options: RecordOptions,
): Promise<RecordGrowth> {
  const name = (await workbook.sheets()).find(sheet => sheet.toLowerCase() === RECORDS_SHEET.toLowerCase());
  const used = name ? await workbook.used(name) : undefined;
  const standing = recordsInSheet(used);
  const columns = columnsFor(Math.max(standing.readings, ...records.map(readingCount)));
  const rowsOf = (each: (crimp: RecordCrimp) => RecordCrimp) =>
    records.flatMap(record =>
      record.crimps.map(crimp => columns.map(({ cell }) => cell({ record, crimp: each(crimp), options }))),
    );
  const headings = columns.map(({ heading }) => heading.toLowerCase());
  const all = rowsOf(crimp => crimp);
  const keys = keysOf(headings, all);
  // Rows of earlier versions name the orders and assemblies of their whole line.
  const before = keysOf(
    headings,
    rowsOf(crimp => ({ ...crimp, order: '', assembly: '' })),
  );
  const rows = all.filter((_, index) => !standing.keys.has(keys[index]!) && !standing.keys.has(before[index]!));
  const growth = { sheet: name ?? RECORDS_SHEET, columns, rows };
  const appended = rows.length > 0 ? appendRows(growth, used, name !== undefined) : undefined;
  return { appended, added: rows.length, standing: all.length - rows.length };
}
