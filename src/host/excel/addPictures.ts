import { MOST_BYTES } from '../../workbook/requestSize';
import type { Change } from '../../workbook/workbook';
import { pngOfSvg } from './pngOfSvg';

type Picture = Extract<Change, { kind: 'picture' }>;

/** White left between a picture and the edges of its block, in points. */
const EDGE = 1;

/**
 * Puts pictures over their blocks, square and as large as the block allows, where this Excel takes pictures and tells
 * the places of cells (ExcelApi 1.10); in as many requests as Excel on the web needs.
 * The blocks must stand with their final heights and widths: their places are read first.
 * @returns why the pictures are missing, in words; undefined where they are there
 */
export async function addPictures(context: Excel.RequestContext, pictures: readonly Picture[]): Promise<string | undefined> {
  if (pictures.length === 0) return undefined;
  if (!Office.context.requirements.isSetSupported('ExcelApi', '1.10')) {
    return 'This version of Excel cannot take pictures from add-ins, so they are missing. A newer one can.';
  }
  const blocks = pictures.map(({ at }) => context.workbook.worksheets.getItem(at.sheet).getRange(at.address));
  for (const block of blocks) block.load('left,top,width,height');
  const images = await Promise.all(pictures.map(({ svg }) => pngOfSvg(svg)));
  await context.sync();
  let bytes = 0;
  for (const [index, { at, alt }] of pictures.entries()) {
    const image = images[index]!;
    if (bytes > 0 && bytes + image.length > MOST_BYTES) {
      await context.sync();
      bytes = 0;
    }
    bytes += image.length;
    const { left, top, width, height } = blocks[index]!;
    const side = Math.min(width, height) - 2 * EDGE;
    const shape = context.workbook.worksheets.getItem(at.sheet).shapes.addImage(image);
    shape.lockAspectRatio = false;
    shape.width = side;
    shape.height = side;
    shape.left = left + EDGE;
    shape.top = top + EDGE;
    shape.lockAspectRatio = true;
    shape.altTextDescription = alt;
    shape.placement = 'OneCell';
  }
  return undefined;
}
