import { blockOf, columnLetters } from '../../workbook/a1';

/** Columns as people write them: `F:I`, `F, H, J`; side by side they are joined. */
export function columnListText(columns: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const column of columns) {
    const run = runs.at(-1);
    if (run && run[1] === column - 1) run[1] = column;
    else runs.push([column, column]);
  }
  return runs.map(([first, last]) => (first === last ? '' : `${columnLetters(first)}:`) + columnLetters(last)).join(', ');
}

/** Reads such a list; undefined where it is none. */
export function columnListOf(text: string): number[] | undefined {
  const parts = text
    .split(/[,;\s]+/)
    .map(part => part.trim())
    .filter(Boolean);
  const columns: number[] = [];
  for (const part of parts) {
    if (!/^[a-z]{1,3}(?:[:-][a-z]{1,3})?$/i.test(part)) return undefined;
    const [first = '', last = first] = part.split(/[:-]/);
    const block = blockOf(`${first}:${last}`);
    if (!block) return undefined;
    columns.push(...Array.from({ length: block.columns }, (_, i) => block.column + i));
  }
  return columns;
}
