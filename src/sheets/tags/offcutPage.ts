import { markup, printPage, type Markup } from '../print/markup';
import { labelPlace, type LabelSheet } from './labelSheets';

/** What stands on the label of an end that goes back into the rack. */
export interface OffcutLabel {
  readonly hose: string;
  /** `2102 mm`. */
  readonly length: string;
  readonly lot: string;
  /** Place and reel that it was cut from. */
  readonly place: string;
  /** Day of making of the hose; "" where it is not known. */
  readonly made: string;
  /** Day on which it was cut. */
  readonly day: string;
}

/** Largest and smallest font of a label, in points, and the share of its height that a line takes. */
const [LARGEST, SMALLEST, LINES] = [14, 5, 6.2] as const;
const POINTS_PER_MM = 72 / 25.4;
/** Mean width of a letter as a share of the font size, of the widest font of the page. */
const LETTER = 0.7;

/** Font of the last two lines as a share of the label's. */
const SMALL = 0.8;

/** The last lines of a label: where it came from, and when. */
function smallLines({ lot, place, made, day }: OffcutLabel): readonly [from: string, days: string] {
  const from = [lot && `lot ${lot}`, place && `from ${place}`].filter(Boolean).join(' · ');
  return [from, [made && `made ${made}`, `cut ${day}`].filter(Boolean).join(' · ')];
}

/** A font with which every line fits the label; long names make it smaller. */
function fontSize(label: OffcutLabel, { label: [width, height] }: LabelSheet): number {
  const { hose, length } = label;
  const small = smallLines(label).map(line => line.length * SMALL);
  const longest = Math.max(hose.length * 1.1, length.length * 1.4, ...small);
  const byWidth = ((width - 6) * POINTS_PER_MM) / (longest * LETTER);
  return Math.max(SMALLEST, Math.min(LARGEST, byWidth, (height * POINTS_PER_MM) / LINES));
}

function styleOf({ page, label }: LabelSheet): string {
  const [[pageWidth, pageHeight], [width, height]] = [page, label];
  return `
@page { size: ${pageWidth}mm ${pageHeight}mm; margin: 0; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; background: #fff; font-family: system-ui, "Segoe UI", "DejaVu Sans", sans-serif; line-height: 1.15; }
.sheet { position: relative; width: ${pageWidth}mm; height: ${pageHeight}mm; overflow: hidden; break-after: page; }
.sheet:last-child { break-after: auto; }
.offcut { position: absolute; width: ${width}mm; height: ${height}mm; padding: 1.5mm 3mm; overflow: hidden; }
.offcut p { margin: 0; }
.hose { font-weight: 700; }
.length { font-size: 1.4em; font-weight: 700; }
.small { font-size: ${SMALL}em; }
@media screen { body { background: #e8e8e8; } .sheet { background: #fff; margin: 4mm auto; } .offcut { outline: 1px dashed #999; } }
`;
}

function labelMarkup(label: OffcutLabel, sheet: LabelSheet, x: number, y: number): Markup {
  const { hose, length } = label;
  const [from, days] = smallLines(label);
  return markup`<div class="offcut" style="left:${x}mm;top:${y}mm;font-size:${fontSize(label, sheet).toFixed(2)}pt"><p class="hose">${hose}</p><p class="length">${length}</p><p class="small">${from}</p><p class="small">${days}</p></div>`;
}

/**
 * Labels for the ends that go back into the rack, as a page that a browser prints at full size.
 * @param used labels of the first sheet that are gone already
 */
export function offcutPage(labels: readonly OffcutLabel[], sheet: LabelSheet, used = 0): string {
  const pages: Markup[][] = [];
  labels.forEach((label, index) => {
    const { page, x, y } = labelPlace(sheet, index + used);
    (pages[page] ??= []).push(labelMarkup(label, sheet, x, y));
  });
  return printPage(
    'Offcut labels',
    styleOf(sheet),
    pages.filter(Boolean).map(labelsOfPage => markup`<section class="sheet">${labelsOfPage}</section>`),
  );
}
