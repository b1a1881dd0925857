import { splitHeading } from '../../core/units/headingUnit';
import type { RawCell, RawTable } from '../../core/catalogue/rawTable';

/** Headings as they came → headings that are understood, with their unit: `Einpresstiefe` → `Insertion depth (mm)`. */
export type HeadingMap = ReadonlyMap<string, string>;

/** The table with its headings replaced as the user mapped them; a unit in the old heading stays where the new one has none. */
export function mapHeadings(table: RawTable, map: HeadingMap): RawTable {
  const [header, ...rows] = table;
  if (!header) return table;
  const mapped = header.map(cell => {
    const wanted = typeof cell === 'string' ? map.get(cell.trim()) : undefined;
    if (wanted === undefined) return cell;
    const { bracket } = splitHeading(String(cell));
    return bracket && splitHeading(wanted).bracket === undefined ? `${wanted} (${bracket})` : wanted;
  });
  return [mapped, ...rows];
}

/** `1.250`: thousands, in a file whose decimals have commas. */
const THOUSANDS = /^[+-]?[1-9]\d{0,2}(?:\.\d{3})+$/;
/** `1,250`: decimals there. */
const DECIMALS = /^[+-]?\d+,\d+$/;

function numberOfComma(cell: RawCell): RawCell {
  if (typeof cell !== 'string') return cell;
  const text = cell.trim();
  if (THOUSANDS.test(text)) return Number(text.replace(/\./g, ''));
  return DECIMALS.test(text) ? Number(text.replace(',', '.')) : cell;
}

/**
 * Columns that are known to hold numbers once their headings are mapped, in a file of decimal commas: what stayed text because the heading
 * did not say so is read as the file's other numbers are.
 * @param columns zero-based
 */
export function commaNumbers(table: RawTable, columns: ReadonlySet<number>): RawTable {
  if (columns.size === 0) return table;
  const [header, ...rows] = table;
  return [header!, ...rows.map(row => row.map((cell, column) => (columns.has(column) ? numberOfComma(cell) : cell)))];
}
