import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { WrittenCell } from '../print/sheetWriter';
import { rackPlace } from '../rack/rackRow';
import { lengthText } from '../table/lengthText';
import { lineCuts, piecesText, type LineCuts, type NumberOf } from './lineCuts';
import type { PlannedReel } from './plannedReel';
import { textWidth } from './textWidth';

/** Looks of the rows, in points: nine can be read at arm's length. A host that counts in dots keeps 11.25 as it is. */
export const [FONT, ROW] = [9, 11.25] as const;
/** Headings are a point smaller. */
export const HEADING_FONT = 8;
/** Bold letters are wider. */
const HEADING_BOLD = 1.15;
/** What a cell leaves free beside its text. */
const FREE = 3.75;
/** Hosts round widths to dots of this size. */
const DOT = 0.75;
/** Widest cells of words; longer ones go on a second line. */
const [MOST_PLACE, MOST_LOT, MOST_PIECE, MOST_LABEL] = [62, 48, 80, 110] as const;

/** A column: of a reel, or of each of the cuts that stand side by side. */
export interface ListColumn<Of> {
  readonly heading: string;
  readonly width: number;
  readonly cell: (of: Of) => WrittenCell;
  readonly format?: string;
  readonly bold?: boolean;
}

/** A reel with its place in the list. */
export interface NumberedReel {
  readonly number: number;
  readonly reel: PlannedReel;
}

/** What the columns are made for. */
export interface ListFacts {
  readonly reels: readonly PlannedReel[];
  readonly unit: LengthUnit;
  readonly numberOf: NumberOf;
  /** What all numbers of pieces have before their line; undefined where they are written in full. */
  readonly prefix: string | undefined;
}

function widthFor(texts: readonly string[], heading: string, most = Infinity): number {
  // A heading has its unit, or its second word, on a second line.
  const words = heading.includes('(') ? heading.replace(' (', '\n(').split('\n') : heading.split(' ');
  const least = Math.max(...words.map(word => textWidth(word, HEADING_FONT) * HEADING_BOLD));
  const longest = texts.reduce((width, text) => Math.max(width, textWidth(text, FONT)), 0);
  return Math.ceil((Math.max(least, Math.min(most, longest)) + FREE) / DOT) * DOT;
}

/** Format of lengths: millimetres as they come, fractions of an inch. */
const lengthFormat = (unit: LengthUnit) => (unit === 'mm' ? 'General' : '# ??/??');

/** A length as it is shown: the fractions of a column are padded to two figures. */
const shownLength = (length: Decimal, unit: LengthUnit) => `${lengthText(length, unit)}${unit === 'in' ? '00' : ''}`;

/** Cut lengths with equal decimals, or as fractions of an inch. */
function cutFormat(lengths: readonly Decimal[], unit: LengthUnit): string {
  if (unit === 'in') return lengthFormat(unit);
  const places = lengths.reduce((most, length) => Math.max(most, length.decimalPlaces()), 0);
  return `0${places > 0 ? `.${'0'.repeat(places)}` : ''}`;
}

/** A line's number as a number, any other name as text. */
const lineCell = (line: string): WrittenCell => (/^[1-9]\d{0,8}$/.test(line) ? Number(line) : line);

const restOf = ({ left, isKept }: PlannedReel) => (left.gt(0) ? (isKept ? 'rack' : 'scrap') : '');

/** Columns of a reel before its cuts: where it is and how long; what the rack never says has none. */
export function reelColumns({ reels, unit }: ListFacts): readonly ListColumn<NumberedReel>[] {
  const heading = `Length (${unit})`;
  const named = (name: string, most: number, text: (reel: PlannedReel) => string): readonly ListColumn<NumberedReel>[] => {
    const texts = reels.map(text);
    if (texts.every(each => each === '')) return [];
    return [{ heading: name, width: widthFor(texts, name, most), cell: ({ reel }) => text(reel), format: '@' }];
  };
  const lengths = reels.map(({ rack }) => shownLength(rack.length, unit));
  return [
    { heading: 'Reel', width: widthFor([`${reels.length}`], 'Reel'), cell: ({ number }) => number, bold: true },
    ...named('Place', MOST_PLACE, ({ rack }) => rackPlace(rack)),
    ...named('Lot', MOST_LOT, ({ rack }) => rack.lot),
    {
      heading,
      width: widthFor(lengths, heading),
      cell: ({ reel }) => reel.rack.length.toNumber(),
      format: lengthFormat(unit),
    },
  ];
}

/** Columns of a reel behind its cuts: what is left and where it goes. */
export function restColumns({ reels, unit }: ListFacts): readonly ListColumn<NumberedReel>[] {
  const left = `Left (${unit})`;
  const lefts = reels.map(reel => shownLength(reel.left, unit));
  return [
    { heading: left, width: widthFor(lefts, left), cell: ({ reel }) => reel.left.toNumber(), format: lengthFormat(unit) },
    { heading: 'Rest to', width: widthFor(reels.map(restOf), 'Rest to'), cell: ({ reel }) => restOf(reel) },
  ];
}

/** Columns of equal cuts for one line, each with its box to tick. */
export function cutColumns({ reels, unit, numberOf, prefix }: ListFacts, hasLabels: boolean): readonly ListColumn<LineCuts>[] {
  const cuts = reels.flatMap(lineCuts);
  const lengths = cuts.map(([{ length }]) => length);
  const texts = (of: (cut: LineCuts) => string) => cuts.map(of);
  const piece = (group: LineCuts) => piecesText(group, numberOf, prefix);
  const heading = `Cut to (${unit})`;
  const label = ([{ line }]: LineCuts) => line.label;
  const named = (name: string, most: number, of: (cut: LineCuts) => string): ListColumn<LineCuts> => ({
    heading: name,
    width: widthFor(texts(of), name, most),
    cell: of,
    format: '@',
  });
  return [
    { heading: '✓', width: 12, cell: () => '☐' },
    {
      heading: 'Qty',
      width: widthFor(
        texts(({ length }) => `${length} ×`),
        'Qty',
      ),
      cell: ({ length }) => length,
      format: '0" ×"',
      bold: true,
    },
    {
      heading,
      width: widthFor(
        lengths.map(length => shownLength(length, unit)),
        heading,
      ),
      cell: ([{ length }]) => length.toNumber(),
      format: cutFormat(lengths, unit),
      bold: true,
    },
    {
      heading: 'Line',
      width: widthFor(
        texts(([{ line }]) => line.line),
        'Line',
        MOST_PIECE,
      ),
      cell: ([{ line }]) => lineCell(line.line),
    },
    named('No.', MOST_PIECE, piece),
    ...(hasLabels ? [named('Label', MOST_LABEL, label)] : []),
  ];
}

/** Lines that a text needs in a column. */
export const linesIn = (cell: WrittenCell, width: number): number =>
  typeof cell === 'string' ? Math.max(1, Math.ceil(textWidth(cell, FONT) / (width - FREE))) : 1;
