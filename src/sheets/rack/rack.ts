import { quotedText } from '../../core/quotedText';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CellValue, RangeContent } from '../../workbook/workbook';
import { hoseKey } from '../jobs/cutLine';
import { JOB_WORDS } from '../table/jobWords';
import type { RowProblem } from '../table/rowProblem';
import { countOfCell, lengthOfCell } from '../table/lengthCell';
import { cellOf, dataRows, findTable, sheetRow, textOf, type SheetTable } from '../table/sheetTable';

/** Pieces of hose in the rack that are alike. */
export interface RackRow {
  /** Row of the sheet; 0 for what has still to be bought. */
  readonly row: number;
  readonly hose: string;
  readonly length: Decimal;
  readonly quantity: number;
  readonly place: string;
  readonly lot: string;
  /** Day of making as `2026-03-01`; "" where the rack does not say. */
  readonly made: string;
}

/** The rack and the rows of its table that cannot be used. */
export interface Rack {
  readonly rows: readonly RackRow[];
  readonly problems: readonly RowProblem[];
}

const RACK_HEADINGS = {
  hose: JOB_WORDS.hose,
  length: /^(?:length|stock length|reel length|left|length left|on the reel)$/,
  quantity: /^(?:quantity|qty\.?|pcs\.?|pieces|number|reels|count)$/,
  place: /^(?:place|rack|bay|shelf|location|where|reel|reel no\.?)$/,
  lot: /^(?:lot|batch|lot no\.?|charge)$/,
  made: /^(?:made|date|date of making|made on|date made|year|quarter)$/,
} as const;
export type RackField = keyof typeof RACK_HEADINGS;
/** A table of the catalogue's hoses has lengths too: those of new reels. */
const CATALOGUE_HEADINGS = { hose: RACK_HEADINGS.hose, family: /^family$/ } as const;

/** The stock table of a sheet: it has at least hose and length. */
export function rackTable(content: RangeContent | undefined): SheetTable<RackField> | undefined {
  return findTable(content, RACK_HEADINGS, ['hose', 'length']);
}

/** How much a sheet looks like a rack: the number of its columns that are known; 0 where it is none. */
export function rackLikeness(content: RangeContent | undefined): number {
  if (findTable(content, CATALOGUE_HEADINGS, ['hose', 'family'])) return 0;
  return Object.keys(rackTable(content)?.columns ?? {}).length;
}

/** Days from the spreadsheet's day 0 to 1 January 1970. */
const EPOCH = 25_569;

/** Year, month and day as they may stand in a text, and the quarter as hoses are marked with it. */
const DAY = /^(\d{4})(?:-(\d{2}))?(?:-(\d{2}))?$/;
const QUARTER = /^(?:(\d{4})[ -]?Q([1-4])|Q([1-4])[ /-]?(\d{4})|([1-4])Q((?:20)?\d{2}))$/i;

/** The same day again where the calendar has it; "" where it does not, as with 30 February. */
function realDay(day: string): string {
  const time = Date.parse(day);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(day) ? day : '';
}

function dayOfText(text: string): string {
  const [, year, month = '01', day = '01'] = DAY.exec(text) ?? [];
  if (year !== undefined) return realDay(`${year}-${month}-${day}`);
  const [, y1, q1, q2, y2, q3, y3 = ''] = QUARTER.exec(text) ?? [];
  const quarter = Number(q1 ?? q2 ?? q3 ?? 0);
  return quarter > 0 ? `${y1 ?? y2 ?? `20${y3.slice(-2)}`}-${String(quarter * 3 - 2).padStart(2, '0')}-01` : '';
}

/** A date cell as `2026-03-01`: serial numbers, `2026-03-01`, `2026-03`, `2026`, quarters (`2026 Q1`, `1Q26`: their first day); "" where it is none of these. */
export function dayOfCell(cell: CellValue): string {
  if (typeof cell === 'string') return dayOfText(cell.trim());
  if (typeof cell !== 'number') return '';
  if (Number.isInteger(cell) && cell >= 1970 && cell < 2100) return `${cell}-01-01`;
  return cell > 20_000 && cell < 73_051 ? new Date((Math.floor(cell) - EPOCH) * 86_400_000).toISOString().slice(0, 10) : '';
}

function readRow(table: SheetTable<RackField>, row: number, unit: LengthUnit): RackRow | undefined {
  const hose = textOf(table, row, 'hose');
  const length = lengthOfCell(cellOf(table, row, 'length'), 'length', table.columns.length!.unit, unit);
  if (hose === '' && !length) return undefined;
  if (hose === '') throw new TradeError('blank', 'hose', 'is blank', 'fill it in');
  if (!length) throw new TradeError('blank', 'length', 'is blank', 'fill it in');
  const quantity = table.columns.quantity ? countOfCell(cellOf(table, row, 'quantity'), 'quantity') : 1;
  if (quantity === undefined) throw new TradeError('blank', 'quantity', 'is blank', 'fill it in');
  const madeCell = cellOf(table, row, 'made');
  const made = dayOfCell(madeCell);
  if (madeCell !== '' && made === '') {
    const received = typeof madeCell === 'object' ? madeCell.error : quotedText(String(madeCell));
    throw new TradeError(
      'date',
      'date of making',
      `is ${received}`,
      'enter a date, like 2026-03-01, a year, or a quarter, like 1Q26',
    );
  }
  const [place, lot] = [textOf(table, row, 'place'), textOf(table, row, 'lot')];
  return { row: sheetRow(table, row), hose, length, quantity, place, lot, made };
}

/** Reads the rack; all lengths come out in `unit`. */
export function readRack(table: SheetTable<RackField>, unit: LengthUnit): Rack {
  const rows: RackRow[] = [];
  const problems: RowProblem[] = [];
  for (const row of dataRows(table)) {
    try {
      const one = readRow(table, row, unit);
      if (one && one.quantity > 0) rows.push(one);
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      problems.push({ row: sheetRow(table, row), sentence: error.message });
    }
  }
  return { rows, problems };
}

/** The rows of one hose. */
export function rackOf(rack: readonly RackRow[], hose: string): readonly RackRow[] {
  return rack.filter(row => hoseKey(row.hose) === hoseKey(hose));
}

/** True where hose is older than so many months: on the very day that ends them it is not yet. Undated hose is not judged. */
export function isTooOld({ made }: RackRow, limit: number | undefined, today: string): boolean {
  if (limit === undefined || made === '') return false;
  const months = monthsBetween(made, today);
  return months > limit || (months === limit && made.slice(-2) !== today.slice(-2));
}

/** Whole years and months from one day to another, as months. */
export function monthsBetween(from: string, to: string): number {
  const [y1, m1, d1] = from.split('-').map(Number) as [number, number, number];
  const [y2, m2, d2] = to.split('-').map(Number) as [number, number, number];
  return (y2 - y1) * 12 + (m2 - m1) - (d2 < d1 ? 1 : 0);
}
