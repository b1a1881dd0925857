import { Markup, markup, printPage } from '../print/markup';
import { labelPlace, type LabelSheet } from './labelSheets';
import { qrPicture } from './qrPicture';
import type { Tag } from './tag';

/** Looks of the labels; the page has the label sheet's size and no margins of its own. */
function styleOf({ page: [pageWidth, pageHeight], label: [width, height] }: LabelSheet): string {
  const qr = Math.min(height - 3, width * 0.42, 30);
  const base = Math.min(9, height / 4.6);
  return `
@page { size: ${pageWidth}mm ${pageHeight}mm; margin: 0; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; background: #fff; font: ${base.toFixed(2)}pt/1.2 system-ui, "Segoe UI", "DejaVu Sans", sans-serif; }
.sheet { position: relative; width: ${pageWidth}mm; height: ${pageHeight}mm; overflow: hidden; break-after: page; }
.sheet:last-child { break-after: auto; }
.tag { position: absolute; width: ${width}mm; height: ${height}mm; padding: 1.5mm 1mm 1.5mm 2.5mm; display: flex; align-items: center; gap: 0.5mm; overflow: hidden; }
.text { flex: 1; min-width: 0; overflow-wrap: anywhere; }
.text p { margin: 0; }
.number { font-size: 1.35em; font-weight: 700; }
.pressure { font-size: 1.2em; font-weight: 700; }
.qr { flex: none; width: ${qr.toFixed(2)}mm; height: ${qr.toFixed(2)}mm; }
@media screen { body { background: #e8e8e8; } .sheet { background: #fff; margin: 4mm auto; } .tag { outline: 1px dashed #999; } }
`;
}

function tagMarkup(tag: Tag, x: number, y: number): Markup {
  return markup`<div class="tag" style="left:${x}mm;top:${y}mm"><div class="text"><p>${tag.maker}</p><p class="number">${tag.number}</p><p class="pressure">${tag.pressure}</p><p>${tag.made} · ${tag.length}</p></div>${new Markup(qrPicture(tag.number))}</div>`;
}

/**
 * Tags as a page that a browser prints at full size; assemblies without a rating get none.
 * @param used labels of the first sheet that are gone already
 */
export function tagPage(tags: readonly Tag[], sheet: LabelSheet, used = 0): string {
  const pages: Markup[][] = [];
  tags
    .filter(tag => tag.pressure)
    .forEach((tag, index) => {
      const { page, x, y } = labelPlace(sheet, index + used);
      (pages[page] ??= []).push(tagMarkup(tag, x, y));
    });
  return printPage(
    'Tags',
    styleOf(sheet),
    pages.filter(Boolean).map(tagsOfPage => markup`<section class="sheet">${tagsOfPage}</section>`),
  );
}
