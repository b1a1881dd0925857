import { lengthText } from '../table/lengthText';
import type { WrittenCell } from '../print/sheetWriter';
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
import { CARD_CAUTION, WHERE_TO_MEASURE } from '../print/cautions';
import { textLines } from '../print/textLines';
import { lotsText } from '../pieces/cardPieces';
import type { CardPart } from './cardParts';
import { clockPicture } from '../print/clockPicture';
import { dueText } from '../jobs/dueText';
import { TWIST_CONVENTION, twistText } from '../print/twistAngle';

/** Letters behind the name where a clock picture stands to their right. */
const BESIDE_CLOCK = 86;

/** Letters of 9 points that fit across all columns; the same in bold; across those behind the first two. */
const [ACROSS, ACROSS_BOLD, BEHIND_NAME] = [140, 120, 112] as const;

/** A row of a card; kinds differ in looks only. */
export interface CardRow {
  readonly kind: 'title' | 'text' | 'stop' | 'end' | 'heading' | 'cells' | 'readings' | 'step' | 'gap';
  readonly cells: readonly WrittenCell[];
  /** SVG text of a clock picture that begins in this row. */
  readonly clock?: string;
}

export const textRows = (kind: CardRow['kind'], words: string, width = ACROSS): CardRow[] =>
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
  return both.length <= ACROSS_BOLD ? textRows('end', both) : names.flatMap(name => textRows('end', name));
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
    ...textRows('text', `Readings: ${WHERE_TO_MEASURE}.${more}`),
    { kind: 'heading', cells: READING_HEADINGS },
    ...pieces.map((piece): CardRow => ({ kind: 'readings', cells: [piece] })),
  ];
}

function titleRow(card: BenchCard, { part, of }: CardPart): CardRow {
  const which = of > 1 ? `, card ${part} of ${of}` : '';
  return { kind: 'title', cells: [`${lineTitle(card)}${which}`, '', '', '', '', '', '', '', '', countText(card)] };
}

const signedRows = ({ source, today }: CardPageOptions): readonly CardRow[] => [
  ...textRows('text', `Made by ____________  Date __________  Tested by ____________  ${source}, ${today}`),
  { kind: 'gap', cells: [''] },
];

/** A card that goes on with the readings of a line. */
export const furtherRows = (card: BenchCard, part: CardPart, options: CardPageOptions): readonly CardRow[] => [
  titleRow(card, part),
  ...textRows('text', factsOf(card)),
  ...readingRows(part),
  ...textRows('text', CARD_CAUTION),
  ...signedRows(options),
];

/** Pieces with their lots, due date and machine; what is checked and ticked before and after the work. */
function originOf({ pieces = [], due, machine }: BenchCard): string {
  const useBy = pieces.find(piece => piece.useBy)?.useBy;
  const words = [lotsText(pieces), useBy && `use by ${useBy}`, due && `due ${dueText(due)}`, machine && `on ${machine}`];
  return words.filter(Boolean).join('; ');
}

const CHECKS = '☐ machine checked today   ☐ trial piece in spec   ☐ finished lengths in limits   ☐ flushed   ☐ capped';

export function cardRows(card: BenchCard, part: CardPart, options: CardPageOptions): readonly CardRow[] {
  const turn = turnText(card);
  const origin = originOf(card);
  const cut = card.cutLength ? `${card.quantity || '?'} × ${lengthText(card.cutLength, card.unit)}` : '—';
  return [
    titleRow(card, part),
    ...textRows('text', factsOf(card)),
    ...(origin ? textRows('text', origin) : []),
    ...stopsOf(card).flatMap(stop => textRows('stop', `STOP: ${stop}`)),
    ...endRows(card),
    { kind: 'heading', cells: endHeadings(card.unit) },
    ...card.ends.map((end, index): CardRow => ({ kind: 'cells', cells: endCells(end, card.unit, index === 0 ? cut : '') })),
    ...textRows('text', sourcesOf(card)),
    ...stepRows(card, options),
    ...(turn ? textRows('text', turn) : []),
    ...(card.ends.every(({ isPlain }) => isPlain) ? [] : textRows('text', CHECKS)),
    ...readingRows(part),
    ...(card.note ? textRows('text', `Note: ${card.note}`) : []),
    ...textRows('text', CARD_CAUTION),
    ...signedRows(options),
  ];
}
