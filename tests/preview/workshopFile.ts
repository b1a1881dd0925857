import { Workbook } from 'exceljs';

/** A formula as Excel stores a live cell of an add-in. */
export function stored(formula: string, result: unknown, ref: string): any {
  return { formula, result, shareType: 'array', ref };
}

/** A small workbook with our formulas, a spill, a name, styles and dates, as bytes of an .xlsx file. */
export async function workshopFile(change: (workbook: Workbook) => void = () => {}): Promise<Uint8Array> {
  const workbook = new Workbook();
  const jobs = workbook.addWorksheet('Jobs', { views: [{ state: 'frozen', ySplit: 1, xSplit: 0, showGridLines: false }] });
  jobs.addRow(['Overall', 'Cut-off A', 'Cut-off B', 'Cut', 'Due']);
  jobs.getRow(1).font = { bold: true, name: 'Calibri', size: 11 };
  jobs.getCell('A1').fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFDDEBF7' } };
  jobs.getCell('A1').border = { bottom: { style: 'thin', color: { argb: 'FF336699' } } };
  jobs.getCell('A1').alignment = { wrapText: true, horizontal: 'center' };
  jobs.getColumn(1).width = 20;
  jobs.getCell('A2').value = 16.5;
  jobs.getCell('B2').value = 0.94;
  jobs.getCell('C2').value = 0.94;
  jobs.getCell('D2').value = stored('_xldudf_HOSE_CUTLENGTH(A2,B2,C2)', 14.62, 'D2');
  jobs.getCell('D2').numFmt = '0.00';
  jobs.getCell('E2').value = new Date(Date.UTC(2026, 10, 25));
  jobs.getCell('E2').numFmt = 'dd/mm/yyyy';
  jobs.getCell('A4').value = 20;
  jobs.getCell('A5').value = 'twenty';
  jobs.getCell('B4').value = 1;
  jobs.getCell('B5').value = 1;
  jobs.getCell('D4').value = stored('_xldudf_HOSE_CUTLENGTH(Overalls,B4:B5,1)', 18, 'D4:D5');
  jobs.getCell('D5').value = { error: '#VALUE!' };
  jobs.getCell('F2').value = { formula: 'D2*2', result: 29.24 };
  workbook.definedNames.add('Jobs!$A$4:$A$5', 'Overalls');
  jobs.mergeCells('A8:C8');
  jobs.getCell('A8').value = 'Invented data';
  change(workbook);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}
