import type { WrittenCell } from '../print/sheetWriter';

/** A row of the list: the name of a hose, a warning, or cuts. */
export interface ListRow {
  readonly kind: 'hose' | 'warning' | 'cuts';
  readonly cells: readonly WrittenCell[];
  readonly height: number;
  /** Every other reel is shaded. */
  readonly isShaded?: boolean;
}

/** Rows that stay on one page: a reel, with the name of its hose where it is the first. */
export interface RowBlock {
  readonly hose: string;
  readonly isFirst: boolean;
  readonly rows: readonly ListRow[];
}

/** How the pages are filled; heights in points. */
export interface PageRules {
  /** What stands above the list on the first page. */
  readonly top: number;
  readonly heading: number;
  /** Height of a page of Letter, the shorter paper, within its margins. */
  readonly page: number;
  readonly pagePerHose: boolean;
  /** The row that names the hose again where a page goes on with it. */
  readonly again: (hose: string) => ListRow;
}

const heightOf = (rows: readonly ListRow[]) => rows.reduce((sum, { height }) => sum + height, 0);

/** The rows page by page: a reel is never parted, and each page names its hose. */
export function listPages(blocks: readonly RowBlock[], rules: PageRules): readonly (readonly ListRow[])[] {
  const pages: ListRow[][] = [[]];
  let left = rules.page - rules.top - rules.heading;
  for (const { hose, isFirst, rows } of blocks) {
    const page = pages.at(-1)!;
    const isFull = heightOf(rows) > left || (rules.pagePerHose && isFirst);
    const fitting = isFull && page.length > 0 ? [] : page;
    if (fitting !== page) {
      pages.push(fitting);
      left = rules.page - rules.heading;
    }
    const all = fitting.length === 0 && !isFirst ? [rules.again(hose), ...rows] : rows;
    fitting.push(...all);
    left -= heightOf(all);
  }
  return pages;
}
