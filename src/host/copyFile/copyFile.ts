import type { CellErrorValue, CellValue as FileCellValue, Style, Worksheet } from 'exceljs';
import { addressOf } from '../../workbook/a1';
import type { CopiedCell, CopiedLooks, CopiedSheet, CopiedWorkbook } from '../../workbook/copiedWorkbook';
import type { CellValue } from '../../workbook/workbook';

const fill = (argb: string): Partial<Style> => ({ fill: { type: 'pattern', pattern: 'solid', fgColor: { argb } } });

const LOOKS: Readonly<Record<CopiedLooks, Partial<Style>>> = {
  title: { font: { bold: true } },
  heading: { font: { bold: true }, ...fill('FFE7EDF3') },
  kept: fill('FFFFF8E1'),
  text: { alignment: { wrapText: true, vertical: 'top' } },
};

function fileValue(value: CellValue): FileCellValue {
  if (typeof value === 'object') return { error: value.error } as CellErrorValue;
  return value === '' ? null : value;
}

/** A formula's last result stands beside it: some programs show that and calculate only when they are told to. */
function contentOf({ formula, value }: CopiedCell): FileCellValue {
  if (formula === undefined) return fileValue(value);
  return { formula: formula.replace(/^=/, ''), result: fileValue(value) ?? '' } as FileCellValue;
}

function writeCells(worksheet: Worksheet, { row, column, cells }: CopiedSheet): void {
  cells.forEach((line, down) =>
    line.forEach((copied, across) => {
      const content = contentOf(copied);
      if (content === null && copied.format === 'General' && !copied.looks) return;
      const cell = worksheet.getCell(row + down + 1, column + across + 1);
      cell.value = content;
      cell.style = { ...(copied.looks && LOOKS[copied.looks]), numFmt: copied.format };
    }),
  );
}

/** In points; that of a row nobody has set the height of. */
const ROW_HEIGHT = 15;

function writeLayout(worksheet: Worksheet, { widths, hiddenRows, hiddenColumns, isHidden, merges }: CopiedSheet): void {
  widths.forEach((width, index) => (worksheet.getColumn(index + 1).width = width));
  for (const number of hiddenRows) {
    const row = worksheet.getRow(number + 1);
    // The library writes no row that has neither cells nor a height.
    if (row.cellCount === 0) row.height = ROW_HEIGHT;
    row.hidden = true;
  }
  for (const column of hiddenColumns) worksheet.getColumn(column + 1).hidden = true;
  if (isHidden) worksheet.state = 'hidden';
  for (const block of merges) worksheet.mergeCells(addressOf(block));
}

/**
 * A copy as an .xlsx file, with the results beside its formulas. The library that writes it is loaded when it is first needed.
 * @returns the file's bytes
 */
export async function copyFile({ title, sheets }: CopiedWorkbook): Promise<Uint8Array> {
  const loaded = (await import('exceljs')) as typeof import('exceljs') & { default?: typeof import('exceljs') };
  const { Workbook } = loaded.default ?? loaded;
  const file = new Workbook();
  file.title = title;
  for (const sheet of sheets) {
    const worksheet = file.addWorksheet(sheet.name);
    writeCells(worksheet, sheet);
    writeLayout(worksheet, sheet);
  }
  return new Uint8Array(await file.xlsx.writeBuffer());
}
