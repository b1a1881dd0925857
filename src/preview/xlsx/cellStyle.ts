import type { IBorderData, IBorderStyleData, IStyleData, Nullable } from '@univerjs/core';
import type { Alignment, Border, Borders, Fill, Font, Style } from 'exceljs';
import { fileColor, hexColor } from './colors';

/** Border styles by the number the spreadsheet page uses. */
const BORDERS = [
  undefined,
  'thin',
  'hair',
  'dotted',
  'dashed',
  'dashDot',
  'dashDotDot',
  'double',
  'medium',
  'mediumDashed',
  'mediumDashDot',
  'mediumDashDotDot',
  'slantDashDot',
  'thick',
] as const;
const HORIZONTAL = [undefined, 'left', 'center', 'right', 'justify', 'justify', 'distributed'] as const;
const VERTICAL = [undefined, 'top', 'middle', 'bottom'] as const;
const SIDES = [
  ['t', 'top'],
  ['b', 'bottom'],
  ['l', 'left'],
  ['r', 'right'],
] as const;
const WRAP = 3;
/** What the library gives to cells that say nothing. */
const USUAL_FONT = { name: 'Calibri', size: 11 } as const;

function indexIn(list: readonly (string | undefined)[], word: string | undefined): number | undefined {
  const found = word === undefined ? -1 : list.indexOf(word);
  return found > 0 ? found : undefined;
}

function bordersOf(borders: Partial<Borders> | undefined): IBorderData | undefined {
  const found: IBorderData = {};
  for (const [key, side] of SIDES) {
    const border = borders?.[side];
    const style = indexIn(BORDERS, border?.style);
    if (style) found[key] = { s: style, cl: { rgb: hexColor(border?.color) ?? '#000000' } };
  }
  return Object.keys(found).length > 0 ? found : undefined;
}

function fontOf(font: Partial<Font> | undefined): IStyleData {
  if (!font) return {};
  return {
    ...(font.name && { ff: font.name }),
    ...(font.size && { fs: font.size }),
    ...(font.bold && { bl: 1 }),
    ...(font.italic && { it: 1 }),
    ...(font.underline && { ul: { s: 1 } }),
    ...(font.strike && { st: { s: 1 } }),
    ...(hexColor(font.color) && { cl: { rgb: hexColor(font.color)! } }),
  };
}

function alignmentOf(alignment: Partial<Alignment> | undefined): IStyleData {
  if (!alignment) return {};
  const ht = indexIn(HORIZONTAL, alignment.horizontal);
  const vt = indexIn(VERTICAL, alignment.vertical);
  return {
    ...(ht && { ht }),
    ...(vt && { vt }),
    ...(alignment.wrapText && { tb: WRAP }),
    ...(typeof alignment.textRotation === 'number' && alignment.textRotation && { tr: { a: alignment.textRotation } }),
  };
}

/** A file's cell style as the spreadsheet page takes it; undefined where nothing is set. */
export function pageStyle(style: Partial<Style> | undefined): IStyleData | undefined {
  if (!style) return undefined;
  const fill = style.fill?.type === 'pattern' && style.fill.pattern !== 'none' ? hexColor(style.fill.fgColor) : undefined;
  const bd = bordersOf(style.border);
  const page: IStyleData = {
    ...fontOf(style.font),
    ...alignmentOf(style.alignment),
    ...(fill && { bg: { rgb: fill } }),
    ...(bd && { bd }),
    ...(style.numFmt && style.numFmt !== 'General' && { n: { pattern: style.numFmt } }),
  };
  return Object.keys(page).length > 0 ? page : undefined;
}

function fileBorder(border: Nullable<IBorderStyleData>): Partial<Border> | undefined {
  const style = border ? BORDERS[border.s] : undefined;
  return style && { style, color: fileColor(border?.cl?.rgb ?? '#000000') };
}

function fileFont(page: IStyleData): Partial<Font> | undefined {
  const font: Partial<Font> = {
    ...(page.ff && { name: page.ff }),
    ...(page.fs && { size: page.fs }),
    ...(page.bl && { bold: true }),
    ...(page.it && { italic: true }),
    ...(page.ul?.s && { underline: true }),
    ...(page.st?.s && { strike: true }),
    ...(page.cl?.rgb && { color: fileColor(page.cl.rgb) }),
  };
  // A font without name and size is shown in another one than the cells around it.
  return Object.keys(font).length > 0 ? { ...USUAL_FONT, ...font } : undefined;
}

function fileAlignment(page: IStyleData): Partial<Alignment> | undefined {
  const alignment: Partial<Alignment> = {
    ...(page.ht && { horizontal: HORIZONTAL[page.ht] }),
    ...(page.vt && { vertical: VERTICAL[page.vt] }),
    ...(page.tb === WRAP && { wrapText: true }),
    ...(page.tr?.a && { textRotation: page.tr.a }),
  };
  return Object.keys(alignment).length > 0 ? alignment : undefined;
}

/** The page's cell style as a file takes it. */
export function fileStyle(page: IStyleData): Partial<Style> {
  const border: Partial<Borders> = {};
  for (const [key, side] of SIDES) {
    const found = fileBorder(page.bd?.[key]);
    if (found) border[side] = found;
  }
  const font = fileFont(page);
  const alignment = fileAlignment(page);
  const background = page.bg?.rgb ? fileColor(page.bg.rgb) : undefined;
  const fill: Fill | undefined = background && { type: 'pattern', pattern: 'solid', fgColor: background };
  return {
    ...(font && { font }),
    ...(alignment && { alignment }),
    ...(fill && { fill }),
    ...(Object.keys(border).length > 0 && { border }),
    ...(page.n?.pattern && { numFmt: page.n.pattern }),
  };
}
