import type { LabelSheet } from './labelSheets';
import { smallLines, type Tag } from './tag';

/** Sizes of the lines of a tag, as shares of its font size. */
export const TAG_LINES = { maker: 1, number: 1.35, pressure: 1.2, made: 1 } as const;
export const LINE_HEIGHT = 1.2;
/** Margins round the text and the code, in mm. */
export const TAG_MARGIN = { top: 1.5, left: 2.5, right: 1, gap: 0.5 } as const;

/**
 * Mean widths of capitals and of other letters and digits as shares of the font size, in DejaVu Sans, the widest font of the page, as measured
 * in Chromium (capitals 0.67 and bold 0.75, small letters 0.58 and 0.65, digits 0.64 and 0.70).
 */
const WIDTHS = { plain: [0.68, 0.61], bold: [0.76, 0.68] } as const;
type Weight = keyof typeof WIDTHS;
const MM_PER_POINT = 25.4 / 72;
/** Largest font, and the smallest that is still read, in points. */
const LARGEST = 9;
const SMALLEST = 4.5;

/** Side of the QR code of a label, in mm. */
export function qrSide({ label: [width, height] }: LabelSheet): number {
  return Math.min(height - 2 * TAG_MARGIN.top, width * 0.42, 30);
}

/** Width of a text as a share of the font size. */
function widthOf(text: string, weight: Weight): number {
  const [capital, other] = WIDTHS[weight];
  return [...text].reduce((sum, letter) => sum + (letter === letter.toLowerCase() ? other : capital), 0);
}

/** Lines that a text takes in a room of so many font sizes; words that are longer than a line are broken. */
function linesOf(text: string, weight: Weight, room: number): number {
  let [lines, used] = [1, 0];
  for (const word of text.split(/(?<=[\s-])/)) {
    const width = widthOf(word.trimEnd(), weight);
    if (used > 0 && used + width > room) [lines, used] = [lines + 1, 0];
    const more = Math.max(0, Math.ceil(width / room) - 1);
    lines += more;
    used += widthOf(word, weight) - more * room;
  }
  return lines;
}

/**
 * The largest font size with which a tag's text fits its label, in points; undefined where none does that can still be read.
 * Widths are taken a little too large rather than too small: a marking must not be cut off.
 */
export function tagFontSize(tag: Tag, sheet: LabelSheet): number | undefined {
  const [width, height] = sheet.label;
  const room = width - qrSide(sheet) - TAG_MARGIN.left - TAG_MARGIN.right - TAG_MARGIN.gap;
  const rows = [
    [tag.maker, TAG_LINES.maker, 'plain'],
    [tag.number, TAG_LINES.number, 'bold'],
    [tag.pressure ?? '', TAG_LINES.pressure, 'bold'],
    [smallLines(tag), TAG_LINES.made, 'plain'],
  ] as const;
  for (let size = Math.min(LARGEST, height / 4.6); size >= SMALLEST; size -= 0.25) {
    const heights = rows.map(([text, share, weight]) => {
      const points = size * share;
      return linesOf(text, weight, room / (points * MM_PER_POINT)) * points * LINE_HEIGHT * MM_PER_POINT;
    });
    if (heights.reduce((sum, one) => sum + one, 0) <= height - 2 * TAG_MARGIN.top) return Math.round(size * 100) / 100;
  }
  return undefined;
}
