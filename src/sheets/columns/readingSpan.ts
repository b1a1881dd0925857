import type { FoundTable } from '../table/findTables';
import { isReadingHeading } from '../crimps/readingColumns';
import type { SheetCells } from '../table/sheetCells';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import { READING } from './columnRoles';
import type { Run } from '../table/cellRuns';

const SAMPLE_ROWS = 50;

function longestRun(flags: readonly boolean[], offset: number): Run | undefined {
  let best: Run | undefined;
  let start = 0;
  for (let i = 0; i <= flags.length; i += 1) {
    if (flags[i]) continue;
    const length = i - start;
    if (length >= 2 && (!best || length > best.last - best.first + 1)) best = { first: offset + start, last: offset + i - 1 };
    start = i + 1;
  }
  return best;
}

const namesReading = (heading: string, index: number) => (/^\d$/.test(heading.trim()) && index > 0) || isReadingHeading(heading);

/** Columns side by side whose numbers lie within 5 % of each other in every row. */
function byContent(cells: SheetCells, { block }: FoundTable, taken: ReadonlySet<number>): Run | undefined {
  const rows = Array.from({ length: Math.min(block.rows - 1, SAMPLE_ROWS) }, (_, i) => block.row + 1 + i);
  const near = (column: number) => {
    const pairs = rows.map(row => [cells.value(row, column), cells.value(row, column + 1)] as const);
    const numbers = pairs.filter((pair): pair is [number, number] => pair.every(value => typeof value === 'number'));
    return (
      numbers.length > 0 && numbers.every(([a, b]) => a > 0 && Math.abs(a - b) <= 0.05 * a && !(a === b && Number.isInteger(a)))
    );
  };
  const free = (column: number) => column < block.column + block.columns && !taken.has(column);
  for (let column = block.column; column < block.column + block.columns; column += 1) {
    let last = column;
    while (free(last) && free(last + 1) && near(last)) last += 1;
    if (last >= column + 2) return { first: column, last };
  }
  return undefined;
}

/** The columns of caliper readings: as somebody said, by their headings, else by what stands in them. */
export function readingSpan(
  cells: SheetCells,
  table: FoundTable,
  taken: ReadonlySet<number>,
  corrections: HeadingCorrections,
): Run | undefined {
  const { headings, block } = table;
  const flags = headings.map((heading, index) => {
    const said = corrections.get(correctionKey(heading));
    if (said !== undefined) return said === READING;
    return !taken.has(block.column + index) && namesReading(heading, index);
  });
  const notThese = headings.flatMap((heading, index) => (corrections.has(correctionKey(heading)) ? [block.column + index] : []));
  return longestRun(flags, block.column) ?? byContent(cells, table, new Set([...taken, ...notThese]));
}
