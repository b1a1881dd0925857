import type { WrittenCell } from '../print/sheetWriter';
import {
  cutColumns,
  linesIn,
  reelColumns,
  restColumns,
  ROW,
  type ListColumn,
  type ListFacts,
  type NumberedReel,
} from './cutListColumns';
import { lineCuts, type LineCuts } from './lineCuts';

/** Width of the print on A4, the narrower paper, in points; hosts round widths of columns, so a little is left free. */
const PRINTED = Math.floor((595 - 2 * 18) * 0.97);
/** Rows on two pages: a list that takes more names its lines without their labels, for the sake of less paper. */
const TWO_PAGES = 110;

/** The columns of a list, and how many cuts stand side by side. */
export interface ListLayout {
  readonly before: readonly ListColumn<NumberedReel>[];
  readonly cut: readonly ListColumn<LineCuts>[];
  readonly across: number;
  readonly after: readonly ListColumn<NumberedReel>[];
}

/** A row of cuts with the height at which nothing of it is cut off. */
export interface CutsRow {
  readonly cells: readonly WrittenCell[];
  readonly height: number;
}

const widthOf = (columns: readonly ListColumn<never>[]) => columns.reduce((sum, { width }) => sum + width, 0);

/** Columns that are printed, in order: those of a reel, of its cuts side by side, of what is left. */
export const printedColumns = ({ before, cut, across, after }: ListLayout): readonly ListColumn<never>[] => [
  ...before,
  ...Array.from({ length: across }, () => cut).flat(),
  ...after,
];

/** As many cuts side by side as the paper is wide: with their labels where the list stays short. */
export function listLayout(facts: ListFacts): ListLayout {
  const [before, after] = [reelColumns(facts), restColumns(facts)];
  const groups = facts.reels.map(reel => lineCuts(reel).length);
  const layouts = [true, false].map((hasLabels): ListLayout => {
    const cut = cutColumns(facts, hasLabels);
    const room = Math.floor((PRINTED - widthOf(before) - widthOf(after)) / widthOf(cut));
    return { before, cut, after, across: Math.max(1, Math.min(room, Math.max(...groups))) };
  });
  const isShort = ({ across }: ListLayout) => groups.reduce((sum, count) => sum + Math.ceil(count / across), 0) <= TWO_PAGES;
  return layouts.find(isShort) ?? layouts.at(-1)!;
}

/** The rows of a reel: its cuts from left to right in cutting order, what is left in the last of them. */
export function cutsRows(layout: ListLayout, numbered: NumberedReel): readonly CutsRow[] {
  const { before, cut, across, after } = layout;
  const groups = lineCuts(numbered.reel);
  const count = Math.ceil(groups.length / across);
  const columns = printedColumns(layout);
  return Array.from({ length: count }, (_, row) => {
    const own = groups.slice(row * across, (row + 1) * across);
    const blank = Array<WrittenCell>((across - own.length) * cut.length).fill('');
    const of = (many: readonly ListColumn<NumberedReel>[], isShown: boolean) =>
      many.map(({ cell }, index): WrittenCell => (isShown || (many === before && index === 0) ? cell(numbered) : ''));
    const cells = [
      ...of(before, row === 0),
      ...own.flatMap(group => cut.map(({ cell }) => cell(group))),
      ...blank,
      ...of(after, row === count - 1),
    ];
    return { cells, height: ROW * Math.max(...cells.map((cell, index) => linesIn(cell, columns[index]!.width))) };
  });
}
