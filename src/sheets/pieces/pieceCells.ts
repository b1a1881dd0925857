import { CONVERTED_PLACES } from '../../core/units/decimalPlaces';
import type { Measure } from '../../cells/sheetCell';
import { convertMeasure, measureUnit } from '../../core/units/measureUnit';
import { addressOf, cellAddress } from '../../workbook/a1';
import type { WrittenCell } from '../print/sheetWriter';
import { turnedBy } from '../table/turnedBy';
import { PIECE_MEASURES, readingRoles, type PieceEndLetter, type PieceRole, type PieceUnits } from './pieceColumns';

/** What is written into one row; what is left out stays blank. Formulas begin with `=`. */
export type PieceCells = Readonly<Partial<Record<PieceRole, WrittenCell | Measure>>>;

/** Where the columns are, zero-based. */
export type PiecePlaces = ReadonlyMap<PieceRole, number>;

/** A value as its column takes it: measures in the unit of its heading. */
export function writtenIn(role: PieceRole, value: WrittenCell | Measure | undefined, symbol: string | undefined): WrittenCell {
  if (value === undefined) return '';
  if (typeof value !== 'object') return value;
  const { quantity, label } = PIECE_MEASURES[role]!;
  const unit = symbol === undefined ? undefined : measureUnit(quantity, symbol);
  if (!unit) throw new Error(`Say in which unit the column for ${label} is: write it in its heading, like (mm).`);
  return convertMeasure(value.value, value.unit, unit).toDecimalPlaces(CONVERTED_PLACES).toNumber();
}

/** Unit of a column on a new sheet. */
export function unitOnNewSheet(role: PieceRole, { length, pressure }: PieceUnits): string | undefined {
  const quantity = PIECE_MEASURES[role]?.quantity;
  return quantity === undefined ? undefined : quantity === 'pressure' ? pressure : length;
}

const cellAt = (row: number, column: number) => cellAddress({ row, column });

/** Unit of a column: as its heading says, or as a new sheet has it. */
export type UnitOfColumn = (role: PieceRole) => string | undefined;

/** The largest spread of an end as the verdict takes it: the cell that somebody has for it, else what the data said on that day. */
function spreadArgument(places: PiecePlaces, row: number, end: PieceEndLetter, cells: PieceCells, unitOf: UnitOfColumn): string {
  const unit = unitOf(`reading1${end}`) ?? unitOf(`target${end}`);
  const role = ([`largestSpread${end}`, 'largestSpread'] as const).find(each => places.has(each));
  const stated = String(writtenIn(`largestSpread${end}`, cells[`largestSpread${end}`], unit));
  if (!role) return stated;
  const cell = cellAt(row, places.get(role)!);
  const [from, to] = [measureUnit('length', unitOf(role) ?? ''), measureUnit('length', unit ?? '')];
  return `IF(${cell}="",${stated || '""'},${cell}${from && to ? turnedBy(from, to) : ''})`;
}

/** Verdict of an end: CRIMPCHECK of its readings; undefined where they do not lie side by side. */
export function crimpVerdictFormula(
  places: PiecePlaces,
  row: number,
  end: PieceEndLetter,
  cells: PieceCells,
  unitOf: UnitOfColumn,
): string | undefined {
  const columns = readingRoles(end).map(role => places.get(role));
  const [target, tolerance] = [places.get(`target${end}`), places.get(`tolerance${end}`)];
  const first = columns[0];
  if (first === undefined || target === undefined || tolerance === undefined) return undefined;
  if (columns.some((column, index) => column !== first + index)) return undefined;
  const readings = addressOf({ row, column: first, rows: 1, columns: columns.length });
  const spread = spreadArgument(places, row, end, cells, unitOf);
  return `=HOSE.CRIMPCHECK(${readings},${cellAt(row, target)},${cellAt(row, tolerance)}${spread && `,,${spread}`})`;
}

/** Verdict of the finished length against the limits in the row; undefined where a column is missing. */
export function lengthVerdictFormula(places: PiecePlaces, row: number): string | undefined {
  const [finished, shortest, longest] = (['finished', 'shortest', 'longest'] as const).map(role => places.get(role));
  if (finished === undefined || shortest === undefined || longest === undefined) return undefined;
  const [length, least, most] = [cellAt(row, finished), cellAt(row, shortest), cellAt(row, longest)];
  const judged = `IF(${length}<${least},"SHORT",IF(${length}>${most},"LONG","IN SPEC"))`;
  return `=IF(${length}="","",IF(AND(ISNUMBER(${length}),ISNUMBER(${least}),ISNUMBER(${most})),${judged},"CHECK"))`;
}
