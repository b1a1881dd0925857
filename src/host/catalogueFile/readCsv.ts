import Papa from 'papaparse';
import type { RawCell, RawTable } from '../../core/catalogue/rawTable';
import { decodeText } from './decodeText';
import { MOST_ROWS, requireFileSize, requireTableSize, UnreadableTable } from './fileLimits';

const POINT = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const COMMA = /^[+-]?(?:\d+,\d+|,\d+)$/;
/** Part names such as 007 stay text. */
const LEADING_ZERO = /^[+-]?0\d/;

/** Whether a file writes decimals with a comma: some cells are such numbers, and none has a decimal point. */
function hasDecimalComma(rows: readonly (readonly string[])[]): boolean {
  const cells = rows.slice(1).flat();
  return cells.some(cell => COMMA.test(cell.trim())) && !cells.some(cell => /^[+-]?\d*\.\d+$/.test(cell.trim()));
}

function cellOf(text: string, decimalComma: boolean): RawCell {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if (LEADING_ZERO.test(trimmed)) return decimalComma && COMMA.test(trimmed) ? Number(trimmed.replace(',', '.')) : text;
  if (POINT.test(trimmed)) return Number(trimmed);
  return decimalComma && COMMA.test(trimmed) ? Number(trimmed.replace(',', '.')) : text;
}

/**
 * A .csv file as a table: any delimiter, decimal point or comma, UTF-8 with or without byte order mark, UTF-16 or Windows-1252. Formulas
 * in it stay text.
 * @throws UnreadableTable where it is too large or holds nothing
 */
export function readCsv(name: string, bytes: Uint8Array): RawTable {
  requireFileSize(name, bytes.length);
  const { data } = Papa.parse<string[]>(decodeText(bytes), { preview: MOST_ROWS + 1, skipEmptyLines: 'greedy' });
  if (data.length === 0) throw new UnreadableTable(`${name} is empty`);
  requireTableSize(
    name,
    data.length,
    data.reduce((most, row) => Math.max(most, row.length), 0),
  );
  const decimalComma = hasDecimalComma(data);
  return data.map((row, index) => row.map(cell => (index === 0 ? cell.trim() || null : cellOf(cell, decimalComma))));
}
