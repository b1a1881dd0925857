import type { Alignment, Cell, ConditionalFormattingOptions, Fill, Worksheet } from 'exceljs';

const solid = (argb: string): Fill => ({ type: 'pattern', pattern: 'solid', fgColor: { argb } });
const THIN = { style: 'thin', color: { argb: 'FFBFB7AC' } } as const;
const BOX = { top: THIN, left: THIN, bottom: THIN, right: THIN } as const;
const FACE = { name: 'Calibri', family: 2 } as const;
const BEET = 'FF6B2343';
const SAND = 'FFF4EFE6';
const WARNING = 'FF9C1C00';

/** Whether people type into a column, or a formula fills it. */
export type ColumnKind = 'typed' | 'computed';

/** A column of a table in a sheet. */
export interface SheetColumn {
  /** Heading, with the unit where there is one. */
  readonly heading: string;
  readonly width: number;
  readonly kind?: ColumnKind;
  /** Number format; `@` keeps what is typed as text. */
  readonly format?: string;
  readonly align?: 'left' | 'center' | 'right';
}

/** Texts stand a little off the numbers of the column before. */
function side({ align = 'left' }: SheetColumn): Partial<Alignment> {
  return { horizontal: align, ...(align === 'left' && { indent: 1 }) };
}

/** Title, what the sheet is for, and the warning, in rows 1 to 3. */
export function putTitle(sheet: Worksheet, title: string, purpose: string, warning: string): void {
  sheet.getCell('A1').value = title;
  sheet.getCell('A1').font = { ...FACE, size: 16, bold: true, color: { argb: BEET } };
  sheet.getCell('A2').value = purpose;
  sheet.getCell('A2').font = { ...FACE, color: { argb: 'FF4A4A4A' } };
  sheet.getCell('A3').value = warning;
  sheet.getCell('A3').font = { ...FACE, bold: true, color: { argb: WARNING } };
  sheet.getRow(1).height = 24;
}

/** Lines that a heading takes in its column: bold letters are a little wider than the digits that widths count. */
function headingLines({ heading, width }: SheetColumn): number {
  let [lines, room] = [1, width - 1];
  for (const word of heading.split(' ')) {
    const wanted = word.length * 1.1 + 1;
    if (room < wanted - 1 && room < width - 1) [lines, room] = [lines + 1, width - 1];
    room -= wanted;
  }
  return lines;
}

/** Looks of the heading cells of a table whose words a formula gives. */
export function dressHeadings(sheet: Worksheet, row: number, columns: readonly SheetColumn[], firstColumn = 1): void {
  columns.forEach((column, index) => {
    const cell = sheet.getCell(row, firstColumn + index);
    cell.font = { ...FACE, bold: true, color: { argb: 'FFFFFFFF' } };
    cell.fill = solid(BEET);
    cell.border = BOX;
    cell.alignment = { wrapText: true, vertical: 'middle', ...side(column) };
  });
  sheet.getRow(row).height = Math.max(34, 16 * Math.max(...columns.map(headingLines)) + 2);
}

/** Heading cells of a table. */
export function putHeadings(sheet: Worksheet, row: number, columns: readonly SheetColumn[], firstColumn = 1): void {
  columns.forEach(({ heading }, index) => (sheet.getCell(row, firstColumn + index).value = heading));
  dressHeadings(sheet, row, columns, firstColumn);
}

/** Widths of a sheet's columns. */
export function setWidths(sheet: Worksheet, columns: readonly SheetColumn[]): void {
  columns.forEach((column, index) => (sheet.getColumn(index + 1).width = column.width));
}

function dress(cell: Cell, column: SheetColumn): void {
  cell.border = BOX;
  cell.alignment = { vertical: 'middle', ...side(column) };
  if (column.format) cell.numFmt = column.format;
  if (column.kind === 'computed') cell.fill = solid(SAND);
}

/** Looks of the rows of a table. */
export function dressRows(sheet: Worksheet, first: number, last: number, columns: readonly SheetColumn[], firstColumn = 1): void {
  for (let row = first; row <= last; row++) {
    columns.forEach((column, index) => dress(sheet.getCell(row, firstColumn + index), column));
  }
}

/** A label with a typed value beside it. */
export function putSetting(sheet: Worksheet, address: string, label: string, value: number | string, format?: string): void {
  const name = sheet.getCell(address);
  name.value = label;
  name.font = { ...FACE, bold: true };
  const cell = sheet.getCell(Number(name.row), Number(name.col) + 1);
  cell.value = value;
  dress(cell, { heading: label, width: 0, align: 'right', ...(format && { format }) });
}

const VERDICTS: readonly (readonly [verdict: string, fill: string, font: string])[] = [
  ['IN SPEC', 'FFD9EAD3', 'FF1E4D1A'],
  ['TIGHT', 'FFFCE0B8', 'FF7A3E00'],
  ['LOOSE', 'FFD3E3F5', 'FF123F73'],
  ['OVAL', 'FFE6D9F0', 'FF4B1D73'],
  ['UNSURE', 'FFFFF3B0', 'FF5E4B00'],
  ['OK', 'FFD9EAD3', 'FF1E4D1A'],
];

/** Ordinary conditional formatting on the verdict's words: the words stay, colour only helps. */
export function colourVerdicts(sheet: Worksheet, range: string): void {
  const first = range.split(':')[0]!;
  const rules = VERDICTS.map(([verdict, fill, font], index) => ({
    type: 'cellIs',
    operator: 'equal',
    formulae: [`"${verdict}"`],
    priority: index + 1,
    style: { fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: fill } }, font: { bold: true, color: { argb: font } } },
  }));
  const broken = {
    type: 'expression',
    formulae: [`ISERROR(${first})`],
    priority: rules.length + 1,
    style: {
      fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFF8D0CB' } },
      font: { bold: true, color: { argb: WARNING } },
    },
  };
  sheet.addConditionalFormatting({ ref: range, rules: [...rules, broken] } as unknown as ConditionalFormattingOptions);
}

/** Colours what a check says against an assembly: any words but OK. */
export function colourStops(sheet: Worksheet, range: string): void {
  const first = range.split(':')[0]!;
  const rule = {
    type: 'expression',
    formulae: [`AND(NOT(ISERROR(${first})),LEN(${first})>0,${first}<>"OK")`],
    priority: VERDICTS.length + 2,
    style: {
      fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFF8D0CB' } },
      font: { bold: true, color: { argb: WARNING } },
    },
  };
  sheet.addConditionalFormatting({ ref: range, rules: [rule] } as unknown as ConditionalFormattingOptions);
}
