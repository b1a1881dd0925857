import type { CopiedCell, CopiedSheet } from '../../workbook/copiedWorkbook';
import { BENCH_CAUTIONS } from '../print/cautions';
import type { CopyWishes } from './copyWishes';

/** A cell that held a formula and holds its value in the copy. */
export interface KeptCells {
  readonly sheet: string;
  /** First cell, or block of cells with the same reason. */
  readonly address: string;
  readonly reason: string;
}

/** Lines of the list; a longer one is counted. */
const MOST_LINES = 500;
const TEXT_WIDTH = 112;

const VALUES_NOTES = [
  'All cells hold values as they were on that day. Nothing here is calculated any more.',
  'If numbers change later, ask for a new copy.',
];
const FORMULA_NOTES = [
  'Formulas are written with functions that every spreadsheet program has. Change a value and what depends on it follows.',
  '#N/A: Benchrow refuses this row and says why. This copy cannot show the reason: check the cells that the row reads.',
  'Coloured cells held a formula that can only be calculated with Benchrow. They hold the value of that day and do not follow. They are listed below.',
];

const line = (...texts: readonly (readonly [text: string, looks?: CopiedCell['looks']])[]): CopiedCell[] =>
  [0, 1, 2].map(index => {
    const [value = '', looks] = texts[index] ?? [];
    return { value, format: '@', ...(looks && { looks }) };
  });

function keptLines(kept: readonly KeptCells[]): CopiedCell[][] {
  if (kept.length === 0) return [];
  const more = kept.length - MOST_LINES;
  return [
    line(['']),
    line(['Sheet', 'heading'], ['Cells', 'heading'], ['Value of that day, because', 'heading']),
    ...kept.slice(0, MOST_LINES).map(({ sheet, address, reason }) => line([sheet], [address], [reason, 'text'])),
    ...(more > 0 ? [line([''], [''], [`and ${more} more`])] : []),
  ];
}

/** The copy's first sheet: what it is, what became values, the usual cautions. */
export function readFirstSheet(name: string, { kind, today }: CopyWishes, kept: readonly KeptCells[]): CopiedSheet {
  const notes = [...(kind === 'values' ? VALUES_NOTES : FORMULA_NOTES), ...BENCH_CAUTIONS];
  const cells = [
    line(['Read first', 'title']),
    line([`Copy without Benchrow, ${kind === 'values' ? 'values only' : 'with plain formulas'}, made on ${today}.`]),
    line(['']),
    ...notes.map(note => line([''], [''], [note, 'text'])),
    ...(kind === 'values' ? [] : keptLines(kept)),
  ];
  return {
    name,
    row: 0,
    column: 0,
    cells,
    hiddenRows: [],
    hiddenColumns: [],
    isHidden: false,
    merges: [],
    widths: [22, 14, TEXT_WIDTH],
  };
}
