import { addressOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { fittingScale } from '../print/fittingScale';
import { lengthText } from '../table/lengthText';
import { pageStarts } from '../print/pageStarts';
import { BAND_FILL, HEAD_FILL, STOP_FILL } from '../print/sheetFills';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';
import { countText, isTurned, lineTitle, type BenchCard, type CrimpEnd } from '../jobs/benchCard';
import {
  benchSteps,
  couplingText,
  diameterLimits,
  crimpText,
  dialText,
  pressureText,
  skiveShort,
  sourcesOf,
  stopsOf,
} from './benchSteps';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CardPageOptions } from './cardPage';
import { BENCH_CAUTIONS, CARD_CAUTION, WHERE_TO_MEASURE } from '../print/cautions';
import { textLines } from '../print/textLines';
import { lotsText } from '../pieces/cardPieces';
import { cardParts, type CardPart } from './cardParts';
import { clockPicture } from '../print/clockPicture';
import { dueText } from '../jobs/dueText';
import { TWIST_CONVENTION, twistText } from '../print/twistAngle';

const COLUMNS = 11;
/** Letters of 9 points that fit across all columns; the same in bold; across those behind the first two. */
const [ACROSS, ACROSS_BOLD, BEHIND_NAME] = [140, 120, 112] as const;
/** Letters behind the name where a clock picture stands to their right. */
const BESIDE_CLOCK = 86;
/** Columns and rows that the clock picture covers, beside the first steps. */
const CLOCK = { column: 9, columns: 2, rows: 8 } as const;
const ROW_POINTS = 12;
const READING_POINTS = 17;
/** The numbers of the work are larger than all else: seventeen points on paper, as on the printed card. */
const [NUMBER_FONT, NUMBER_POINTS] = [23, 28] as const;
/** Columns of those numbers: end, cut length, insertion, die, dial, crimp diameter. */
const NUMBERS = 7;
const WIDTHS = [44, 106, 62, 58, 66, 58, 58, 64, 72, 58, 58] as const;
const MARGIN = 28;
const SCALE = fittingScale(WIDTHS, 'portrait', MARGIN);
/** Points of height that Letter, the shorter paper, has for rows at that scale; a row less, since hosts round heights. */
const PAGE_POINTS = Math.floor(((792 - 2 * MARGIN) / SCALE) * 100) - ROW_POINTS;

const CLOCK_WORDS = 'Clock picture of the two bent ends: the sheet says the same in words under the steps';

/** A row of a card; kinds differ in looks only. */
interface CardRow {
  readonly kind: 'title' | 'text' | 'stop' | 'end' | 'heading' | 'cells' | 'readings' | 'step' | 'gap';
  readonly cells: readonly WrittenCell[];
  /** SVG text of a clock picture that begins in this row. */
  readonly clock?: string;
}

const text = (kind: CardRow['kind'], words: string, width = ACROSS): CardRow[] =>
  textLines(words, width).map(line => ({ kind, cells: [line] }));

function endCells(end: CrimpEnd, unit: LengthUnit, cut: string): WrittenCell[] {
  const small = (length: Decimal | undefined) => (length ? crimpText(length, unit) : '—');
  return [
    end.end,
    cut,
    small(end.insertionDepth),
    end.die ?? '—',
    dialText(end),
    small(end.diameter),
    '',
    diameterLimits(end, unit) || '—',
    '',
    skiveShort(end, unit),
    small(end.crimpLength),
  ];
}

/** Headings of the numbers, as on the printed card. */
const endHeadings = (unit: LengthUnit): readonly string[] => [
  'end',
  `cut (${unit})`,
  `insert (${unit})`,
  'die',
  'dial',
  `crimp to (${unit})`,
  '',
  'limits of the mean',
  '',
  `skive (${unit})`,
  'length',
];

/** The names of couplings are longer than any cell of the table under them. */
function endRows({ ends }: BenchCard): readonly CardRow[] {
  const names = ends.map(end => `End ${end.end}: ${couplingText(end)}`);
  const both = names.join('; ');
  return both.length <= ACROSS_BOLD ? text('end', both) : names.flatMap(name => text('end', name));
}

function factsOf(card: BenchCard): string {
  const { unit, overall, limits } = card;
  return [
    card.hose,
    `overall ${overall ? `${lengthText(overall, unit)} ${unit}` : 'not stated'}${limits ? ` (${lengthText(limits.shortest, unit)} … ${lengthText(limits.longest, unit)})` : ''}`,
    `working pressure ${pressureText(card)}`,
    card.guard && `guard: ${card.guard}`,
    card.order && `order ${card.order}`,
    card.assembly && `assembly ${card.assembly}`,
  ]
    .filter(Boolean)
    .join('; ');
}

function turnText(card: BenchCard): string | undefined {
  if (!isTurned(card)) return undefined;
  const turn = card.twist === undefined ? 'Twist angle not stated' : twistText(card.twist, card.overall, card.unit);
  return `${turn}. ${TWIST_CONVENTION}`;
}

/** The steps to tick off; beside the first ones the clock picture of two bent ends. */
function stepRows(card: BenchCard, options: CardPageOptions): CardRow[] {
  const clock = card.twist === undefined || !isTurned(card) ? undefined : clockPicture(card.twist);
  const rows = benchSteps(card, options.rule).flatMap(({ name, text: words }) =>
    textLines(words, clock ? BESIDE_CLOCK : BEHIND_NAME).map((line, index): CardRow => ({
      kind: 'step',
      cells: [index === 0 ? '☐' : '', index === 0 ? name : '', line],
    })),
  );
  return rows.map((row, index) => (clock && index === 0 ? { ...row, clock } : row));
}

const READING_HEADINGS = ['piece', 'A 1', 'A 2', 'A 3', 'A 4', 'mean', 'B 1', 'B 2', 'B 3', 'B 4', 'mean'];

function readingRows({ pieces, part, of }: CardPart): readonly CardRow[] {
  const more = part < of ? ' Further pieces: on the next card of this line.' : '';
  return [
    ...text('text', `Readings: ${WHERE_TO_MEASURE}.${more}`),
    { kind: 'heading', cells: READING_HEADINGS },
    ...pieces.map((piece): CardRow => ({ kind: 'readings', cells: [piece] })),
  ];
}

function titleRow(card: BenchCard, { part, of }: CardPart): CardRow {
  const which = of > 1 ? `, card ${part} of ${of}` : '';
  return { kind: 'title', cells: [`${lineTitle(card)}${which}`, '', '', '', '', '', '', '', '', countText(card)] };
}

const signedRows = ({ source, today }: CardPageOptions): readonly CardRow[] => [
  ...text('text', `Made by ____________  Date __________  Tested by ____________  ${source}, ${today}`),
  { kind: 'gap', cells: [''] },
];

/** A card that goes on with the readings of a line. */
const furtherRows = (card: BenchCard, part: CardPart, options: CardPageOptions): readonly CardRow[] => [
  titleRow(card, part),
  ...text('text', factsOf(card)),
  ...readingRows(part),
  ...text('text', CARD_CAUTION),
  ...signedRows(options),
];

/** Pieces with their lots, due date and machine; what is checked and ticked before and after the work. */
function originOf({ pieces = [], due, machine }: BenchCard): string {
  const useBy = pieces.find(piece => piece.useBy)?.useBy;
  const words = [lotsText(pieces), useBy && `use by ${useBy}`, due && `due ${dueText(due)}`, machine && `on ${machine}`];
  return words.filter(Boolean).join('; ');
}

const CHECKS = '☐ machine checked today   ☐ trial piece in spec   ☐ finished lengths in limits   ☐ flushed   ☐ capped';

function cardRows(card: BenchCard, part: CardPart, options: CardPageOptions): readonly CardRow[] {
  const turn = turnText(card);
  const origin = originOf(card);
  const cut = card.cutLength ? `${card.quantity || '?'} × ${lengthText(card.cutLength, card.unit)}` : '—';
  return [
    titleRow(card, part),
    ...text('text', factsOf(card)),
    ...(origin ? text('text', origin) : []),
    ...stopsOf(card).flatMap(stop => text('stop', `STOP: ${stop}`)),
    ...endRows(card),
    { kind: 'heading', cells: endHeadings(card.unit) },
    ...card.ends.map((end, index): CardRow => ({ kind: 'cells', cells: endCells(end, card.unit, index === 0 ? cut : '') })),
    ...text('text', sourcesOf(card)),
    ...stepRows(card, options),
    ...(turn ? text('text', turn) : []),
    ...(card.ends.every(({ isPlain }) => isPlain) ? [] : text('text', CHECKS)),
    ...readingRows(part),
    ...(card.note ? text('text', `Note: ${card.note}`) : []),
    ...text('text', CARD_CAUTION),
    ...signedRows(options),
  ];
}

const HEIGHTS: Readonly<Partial<Record<CardRow['kind'], number>>> = { readings: READING_POINTS, cells: NUMBER_POINTS };
const heightOf = (rows: readonly CardRow[]) => rows.reduce((sum, { kind }) => sum + (HEIGHTS[kind] ?? ROW_POINTS), 0);

/** Cards page by page: as many as a page holds, at least one, the cautions under the last of each page. */
function pagesOf(cards: readonly (readonly CardRow[])[], cautions: readonly CardRow[]): readonly (readonly CardRow[])[] {
  const pages: CardRow[][] = [];
  for (const card of cards) {
    const page = pages[pages.length - 1];
    if (page && heightOf(page) + heightOf(card) + heightOf(cautions) <= PAGE_POINTS) page.push(...card);
    else pages.push([...card]);
  }
  return pages.map(page => [...page, ...cautions]);
}

function dress(writer: SheetWriter, rows: readonly CardRow[]): void {
  rows.forEach(({ kind, clock }, row) => {
    if (kind === 'title') writer.style(row, 0, 1, COLUMNS, { bold: true, fill: HEAD_FILL, border: 'bottom' });
    if (kind === 'stop') writer.style(row, 0, 1, COLUMNS, { bold: true, fill: STOP_FILL });
    if (kind === 'heading') writer.style(row, 0, 1, COLUMNS, { fill: BAND_FILL, border: 'all' });
    if (kind === 'end') writer.style(row, 0, 1, COLUMNS, { bold: true });
    if (kind === 'cells') {
      writer.style(row, 0, 1, COLUMNS, { border: 'bottom', rowHeight: NUMBER_POINTS });
      writer.style(row, 0, 1, NUMBERS, { bold: true, fontSize: NUMBER_FONT });
    }
    if (kind === 'readings') writer.style(row, 0, 1, COLUMNS, { border: 'all', rowHeight: READING_POINTS });
    if (clock) writer.picture(row, CLOCK.column, CLOCK.rows, CLOCK.columns, clock, CLOCK_WORDS);
  });
}

/** Bench cards as a new worksheet: one card a line, several a page, with print area and page breaks. */
export function cardSheet(sheet: string, cards: readonly BenchCard[], options: CardPageOptions): readonly Change[] {
  const cautions = BENCH_CAUTIONS.flatMap(caution => text('text', caution));
  const pages = pagesOf(
    cards.flatMap(card =>
      cardParts(card).map(part => (part.part === 1 ? cardRows(card, part, options) : furtherRows(card, part, options))),
    ),
    cautions,
  );
  const rows = pages.flat();
  const breaksBefore = pageStarts(pages);
  const writer = new SheetWriter(sheet)
    .format(0, 0, rows.length, COLUMNS, '@')
    .style(0, 0, rows.length, COLUMNS, { fontSize: 9, rowHeight: ROW_POINTS })
    .values(
      0,
      0,
      rows.map(row => row.cells),
    )
    .widths(...WIDTHS);
  dress(writer, rows);
  const printArea = addressOf({ row: 0, column: 0, rows: Math.max(1, rows.length), columns: COLUMNS });
  return writer.page({ orientation: 'portrait', printArea, breaksBefore, scale: SCALE, margin: MARGIN }).done();
}
