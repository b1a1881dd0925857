import type { CellValue } from '../../workbook/workbook';
import type { PaperChoice } from './paperFields';
import type { PrintedLine, PrintedQuote } from './printedQuote';

/** A line as the paper shows it. */
export interface PaperLine extends PrintedLine {
  /** `+12 / −4`; "" where it is not known. */
  readonly tolerance: string;
  /** SVG text; undefined where an end's angle is not known. */
  readonly drawing: string | undefined;
}

/** A column of the paper. */
export interface PaperColumn {
  readonly id: string;
  readonly heading: string;
  /** In points. */
  readonly width: number;
  readonly isMoney?: boolean;
  readonly cells: readonly CellValue[];
}

/** Columns in the order of the paper: name in the quote, heading where the quote's own is not taken, width, choice that leaves it out. */
const COLUMNS = [
  ['line', 'Line', 34],
  ['label', 'Wanted for', 110, 'label'],
  ['hose', 'Hose', 96, 'hose'],
  ['fittingA', 'Fitting A', 130, 'fittings'],
  ['fittingB', 'Fitting B', 130, 'fittings'],
  ['guard', 'Guard', 84, 'guard'],
  ['drawing', 'Drawing (not to scale)', 76, 'drawing'],
  ['overall', undefined, 62],
  ['tolerance', 'Tolerance', 62, 'tolerance'],
  ['temperature', undefined, 66, 'use'],
  ['fluid', 'Fluid', 80, 'use'],
  ['pressure', undefined, 62, 'pressure'],
  ['rating', 'Rating', 120, 'pressure'],
  ['note', 'Note', 130],
  ['quantity', 'Quantity', 54],
  ['each', 'Price each', 64],
  ['lineTotal', 'Line total', 70],
] as const satisfies readonly (readonly [keyof PaperLine, string | undefined, number, PaperChoice?])[];

const MONEY: readonly string[] = ['each', 'lineTotal'];

/** The columns that have something to show and are not left out, then the prices at other quantities. */
export function paperColumns(
  { headings, breaks }: PrintedQuote,
  lines: readonly PaperLine[],
  leftOut: readonly string[],
): readonly PaperColumn[] {
  const columns = COLUMNS.flatMap(([id, heading, width, choice]): PaperColumn[] => {
    if (choice && leftOut.includes(choice)) return [];
    const cells = lines.map(line => line[id] ?? '');
    if (cells.every(cell => cell === '')) return [];
    const shown = heading ?? headings[id as keyof PrintedQuote['headings']] ?? id;
    return [{ id, heading: shown, width, isMoney: MONEY.includes(id), cells: id === 'drawing' ? lines.map(() => '') : cells }];
  });
  if (leftOut.includes('breaks')) return columns;
  const others = breaks.map(({ heading, prices }) => ({ id: heading, heading, width: 64, isMoney: true, cells: prices }));
  return [...columns, ...others];
}
