import type { SampleTable, TableCell } from './sampleTable';

function field(cell: TableCell): string {
  if (cell === undefined) return '';
  const text = cell instanceof Date ? cell.toISOString().slice(0, 10) : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A table as comma separated values (RFC 4180), with a byte order mark so that spreadsheets read `°` as it is. */
export function csv({ headings, rows }: SampleTable): Uint8Array {
  const lines = [headings, ...rows].map(cells => cells.map(field).join(','));
  return new TextEncoder().encode(`\ufeff${lines.join('\r\n')}\r\n`);
}
