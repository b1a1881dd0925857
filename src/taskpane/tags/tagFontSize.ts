import type { LabelSheet } from './labelSheets';
import type { Tag } from './tag';

/** Sizes of the lines of a tag, as shares of its font size. */
export const TAG_LINES = { maker: 1, number: 1.35, pressure: 1.2, made: 1 } as const;
export const LINE_HEIGHT = 1.2;
/** Margins round the text and the code, in mm. */
export const TAG_MARGIN = { top: 1.5, left: 2.5, right: 1, gap: 0.5 } as const;

/** Width of a letter as a share of the font size: the mean of the capitals in DejaVu Sans, the widest font of the page, as measured in Chromium. */
const LETTER = { plain: 0.68, bold: 0.76 } as const;
const MM_PER_POINT = 25.4 / 72;
/** Largest font, and the smallest that is still read, in points. */
const LARGEST = 9;
const SMALLEST = 4.5;

/** Side of the QR code of a label, in mm. */
export function qrSide({ label: [width, height] }: LabelSheet): number {
  return Math.min(height - 2 * TAG_MARGIN.top, width * 0.42, 30);
}

/** Lines that a text takes; words that are longer than a line are broken. */
function linesOf(text: string, letters: number): number {
  let [lines, used] = [1, 0];
  for (const word of text.split(/[\s]+|(?<=-)/)) {
    const room = used === 0 ? letters : letters - used - 1;
    if (word.length <= room) used += word.length + (used === 0 ? 0 : 1);
    else {
      lines += Math.ceil(word.length / letters) - (used === 0 ? 1 : 0);
      used = word.length % letters || letters;
    }
  }
  return lines;
}

/**
 * The largest font size with which a tag's text fits its label, in points; undefined where none does that can still be read.
 * The text is reckoned a little too wide rather than too narrow: a marking must not be cut off.
 */
export function tagFontSize(tag: Tag, sheet: LabelSheet): number | undefined {
  const [width, height] = sheet.label;
  const room = width - qrSide(sheet) - TAG_MARGIN.left - TAG_MARGIN.right - TAG_MARGIN.gap;
  const rows = [
    [tag.maker, TAG_LINES.maker, LETTER.plain],
    [tag.number, TAG_LINES.number, LETTER.bold],
    [tag.pressure ?? '', TAG_LINES.pressure, LETTER.bold],
    [`${tag.made} · ${tag.length}`, TAG_LINES.made, LETTER.plain],
  ] as const;
  for (let size = Math.min(LARGEST, height / 4.6); size >= SMALLEST; size -= 0.25) {
    const heights = rows.map(([text, share, letter]) => {
      const letters = Math.max(1, Math.floor(room / (size * share * letter * MM_PER_POINT)));
      return linesOf(text, letters) * size * share * LINE_HEIGHT * MM_PER_POINT;
    });
    if (heights.reduce((sum, one) => sum + one, 0) <= height - 2 * TAG_MARGIN.top) return Math.round(size * 100) / 100;
  }
  return undefined;
}
