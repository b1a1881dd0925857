import { Markup, markup, printPage } from '../print/markup';
import { labelPlace, type LabelSheet } from './labelSheets';
import { qrPicture } from './qrPicture';
import { smallLines, type Tag } from './tag';
import { LINE_HEIGHT, qrSide, TAG_LINES, TAG_MARGIN, tagFontSize } from './tagFontSize';

/** Looks of the labels; the page has the label sheet's size and no margins of its own. */
function styleOf(sheet: LabelSheet): string {
  const { page, label } = sheet;
  const [[pageWidth, pageHeight], [width, height], qr] = [page, label, qrSide(sheet)];
  const { top, left, right, gap } = TAG_MARGIN;
  return `
@page { size: ${pageWidth}mm ${pageHeight}mm; margin: 0; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; background: #fff; font-family: system-ui, "Segoe UI", "DejaVu Sans", sans-serif; line-height: ${LINE_HEIGHT}; }
.sheet { position: relative; width: ${pageWidth}mm; height: ${pageHeight}mm; overflow: hidden; break-after: page; }
.sheet:last-child { break-after: auto; }
.tag { position: absolute; width: ${width}mm; height: ${height}mm; padding: ${top}mm ${right}mm ${top}mm ${left}mm; display: flex; align-items: center; gap: ${gap}mm; overflow: hidden; }
.text { flex: 1; min-width: 0; overflow-wrap: anywhere; }
.text p { margin: 0; }
.number { font-size: ${TAG_LINES.number}em; font-weight: 700; }
.pressure { font-size: ${TAG_LINES.pressure}em; font-weight: 700; }
.qr { flex: none; width: ${qr.toFixed(2)}mm; height: ${qr.toFixed(2)}mm; }
@media screen { body { background: #e8e8e8; } .sheet { background: #fff; margin: 4mm auto; } .tag { outline: 1px dashed #999; } }
`;
}

function tagMarkup(tag: Tag, size: number, x: number, y: number): Markup {
  return markup`<div class="tag" style="left:${x}mm;top:${y}mm;font-size:${size}pt"><div class="text"><p>${tag.maker}</p><p class="number">${tag.number}</p><p class="pressure">${tag.pressure}</p><p>${smallLines(tag)}</p></div>${new Markup(qrPicture(tag.number))}</div>`;
}

/**
 * Tags as a page that a browser prints at full size; assemblies without a rating get none, and none whose text does not fit (`misfits`).
 * @param used labels of the first sheet that are gone already
 */
export function tagPage(tags: readonly Tag[], sheet: LabelSheet, used = 0): string {
  const pages: Markup[][] = [];
  const fitting = tags.flatMap(tag => {
    const size = tag.pressure ? tagFontSize(tag, sheet) : undefined;
    return size ? [{ tag, size }] : [];
  });
  fitting.forEach(({ tag, size }, index) => {
    const { page, x, y } = labelPlace(sheet, index + used);
    (pages[page] ??= []).push(tagMarkup(tag, size, x, y));
  });
  return printPage(
    'Tags',
    styleOf(sheet),
    pages.filter(Boolean).map(tagsOfPage => markup`<section class="sheet">${tagsOfPage}</section>`),
  );
}

/** What is not printed because its text does not fit labels of this size; "" where all fit. */
export function misfits(tags: readonly Tag[], sheet: LabelSheet): string {
  const numbers = tags.filter(tag => tag.pressure && !tagFontSize(tag, sheet)).map(tag => tag.number);
  if (numbers.length === 0) return '';
  const some = numbers.length > 5 ? `${numbers.slice(0, 5).join(', ')} and ${numbers.length - 5} more` : numbers.join(', ');
  return `Too much text for these labels, not printed: ${some}. Take larger labels, or shorten maker or number.`;
}
