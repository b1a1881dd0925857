import { IUniverInstanceService } from '@univerjs/core';
import { Workbook as Xlsx, type Worksheet } from 'exceljs';
import { headlessWorkbook, type HeadlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { isReady } from '../../../src/sheets/jobs/jobLine';
import { readRack } from '../../../src/sheets/rack/rack';
import { readCrimpRows, measuredCrimps } from '../../../src/sheets/crimps/readCrimpRows';
import { rememberAnswer } from '../../../src/sheets/table/tableAnswers';
import { expectLeftOut, expectQuestions, STEP_OF_1_MM, toldLine } from './sheetCase';

let open: HeadlessWorkbook | undefined;
afterEach(() => {
  open?.dispose();
  open = undefined;
});

/** A file as a spreadsheet program writes it, opened in the try-out page's own way. */
async function opened(name: string, fill: (sheet: Worksheet) => void, selected = 'A2'): Promise<UniverWorkbook> {
  const file = new Xlsx();
  fill(file.addWorksheet(name));
  const { data } = await readXlsx(new Uint8Array(await file.xlsx.writeBuffer()), `${name}.xlsx`);
  open = headlessWorkbook(data, { engineFunctions: [], cancelRunning: () => {} });
  open.univer.__getInjector().get(IUniverInstanceService).focusUnit(data.id);
  const port = new UniverWorkbook(open.univer, open.api);
  await open.calculate();
  await port.select({ sheet: name, address: selected });
  return port;
}

async function expectFile(
  port: UniverWorkbook,
  taken: readonly string[],
  leftOut: readonly string[],
  asks: readonly string[] = [],
) {
  const { lines, report, questions } = await readJobs(port, STEP_OF_1_MM);
  expect(lines.filter(line => isReady(line) && line.quantity !== 0).map(toldLine)).toEqual(taken);
  expectLeftOut(report.leftOut, leftOut);
  expectQuestions(questions, asks);
}

test('merged names, a merged quantity, hidden and filtered rows, dates, text numbers, rich text, errors of formulas', async () => {
  const port = await opened(
    'Jobs',
    sheet => {
      sheet.addRow(['Hoses of the week']);
      sheet.mergeCells('A1:E1');
      sheet.addRow([]);
      sheet.addRow(['Hose', '', 'Qty', 'Wanted by', 'Status']);
      sheet.getCell('B3').value = { richText: [{ text: 'Cut ' }, { text: 'length', font: { bold: true } }, { text: '\n(mm)' }] };
      sheet.addRow(['Alder DN 12', 640, 2, new Date(Date.UTC(2026, 9, 9)), '']);
      sheet.addRow(['', '650', 1, new Date(Date.UTC(2026, 9, 9)), '']);
      sheet.addRow(['', 660, 1, '', '']);
      sheet.mergeCells('A4:A6');
      sheet.addRow(['Larch DN 16', new Date(Date.UTC(2026, 2, 8)), 1, '', '']);
      sheet.addRow(['Larch DN 16', 670, 3, '', '']);
      sheet.addRow(['Larch DN 16', 680, '', '', '']);
      sheet.mergeCells('C8:C9');
      sheet.addRow(['Larch DN 16', 690, 1, '', new Date(Date.UTC(2026, 9, 5))]);
      sheet.addRow(['Larch DN 16', { formula: '1/0', result: { error: '#DIV/0!' } }, 1, '', '']);
      sheet.addRow(['Larch DN 16', { formula: '600+100', result: 700 }, 1, '', '']);
      sheet.addRow(['Larch DN 16', '1,250', 1, '', '']);
      sheet.addRow(['Total', { formula: 'SUM(B4:B13)', result: 0 }, 9, '', '']);
      for (const at of ['D4', 'D5', 'E10']) sheet.getCell(at).numFmt = 'dd/mm/yyyy';
      sheet.getCell('B7').numFmt = 'd-mmm';
      sheet.getRow(6).hidden = true;
    },
    'A4',
  );
  await expectFile(
    port,
    ['4: Alder DN 12, cut 640 mm, × 2', '5: Alder DN 12, cut 650 mm, × 1', '12: Larch DN 16, cut 700 mm, × 1'],
    [
      '6 hidden',
      '7 stop: is a date',
      '8 stop: merged over rows 8 to 9',
      '9 stop: merged over rows 8 to 9',
      '10 done',
      '11 stop: #DIV/0!',
      '13 stop: 1.250 or 1250',
      '14 total',
    ],
    ['Cut length (mm) has 1,250: is that 1.250 or 1250?'],
  );
  await rememberAnswer(port, 'jobs', 'Jobs', 'comma', 'Cut length (mm)', 'thousands');
  const { lines, questions } = await readJobs(port, STEP_OF_1_MM);
  expect(questions).toEqual([]);
  expect(lines.map(toldLine)).toContain('13: Larch DN 16, cut 1250 mm, × 1');
});

test('headings in two merged rows, far from the corner', async () => {
  const port = await opened(
    'Jobs',
    sheet => {
      sheet.getCell('C5').value = 'Hose';
      sheet.mergeCells('C5:C6');
      sheet.getCell('D5').value = 'Coupling';
      sheet.mergeCells('D5:E5');
      sheet.getCell('F5').value = 'Length (in)';
      sheet.mergeCells('F5:G5');
      sheet.getCell('H5').value = 'Qty';
      sheet.mergeCells('H5:H6');
      ['A', 'B', 'overall', 'cut'].forEach((text, i) => (sheet.getRow(6).getCell(4 + i).value = text));
      ['Alder DN 12', 'Straight', 'Elbow 90', '31 1/2"', 25.25, 2].forEach(
        (cell, i) => (sheet.getRow(7).getCell(3 + i).value = cell),
      );
    },
    'D7',
  );
  await expectFile(port, ['7: Alder DN 12 [Straight + Elbow 90], overall 31 1/2 in, cut 25 1/4 in, × 2'], []);
});

test('a filter leaves out what it hides; the tick of the person takes it', async () => {
  const port = await opened('Jobs', sheet => {
    sheet.addRow(['Hose', 'Length, mm', 'Pcs']);
    for (const [i, hose] of ['Alder DN 12', 'Larch DN 16', 'Alder DN 12'].entries()) sheet.addRow([hose, 600 + i, 1]);
    sheet.autoFilter = 'A1:C4';
    sheet.getRow(3).hidden = true;
  });
  await expectFile(port, ['2: Alder DN 12, cut 600 mm, × 1', '4: Alder DN 12, cut 602 mm, × 1'], ['3 hidden']);
  const { report } = await readJobs(port, { ...STEP_OF_1_MM, take: new Set(['hidden'] as const) });
  expect(report.taken).toEqual([2, 3, 4]);
});

test('a rack with dates of making, a percent and a price that are no lengths', async () => {
  const port = await opened('Rack', sheet => {
    sheet.addRow(['Hose', 'Length (m)', 'Reel', 'Left (m)', 'Full', 'Made']);
    sheet.addRow(['Alder DN 12', 50, 'R1', 12.5, 0.25, new Date(Date.UTC(2025, 3, 1))]);
    sheet.addRow(['', 50, 'R2', { formula: 'B3-10', result: 40 }, 0.8, '2Q25']);
    sheet.mergeCells('A2:A3');
    sheet.getCell('F2').numFmt = 'mmm yyyy';
    sheet.getCell('E2').numFmt = '0%';
  });
  const rack = (await readRack(port, 'Rack'))!;
  expect(rack.report.leftOut).toEqual([]);
  expect(rack.rows.map(({ hose, length, reel, made }) => [hose, `${length.value} ${length.unit.symbol}`, reel, made])).toEqual([
    ['Alder DN 12', '12.5 m', 'R1', '2025-04-01'],
    ['Alder DN 12', '40 m', 'R2', '2025-04-01'],
  ]);
});

test('crimps under numbered headings, target above, hidden rows read all the same', async () => {
  const port = await opened(
    'Bench',
    sheet => {
      sheet.addRow(['Target', 24.9, 'mm']);
      sheet.addRow(['Tolerance ±', 0.1, 'mm']);
      sheet.addRow([]);
      sheet.addRow(['Crimp', 1, 2, 3, 4]);
      sheet.addRow([1, 24.91, 24.88, 24.9, 24.93]);
      sheet.addRow([2, 24.9, 24.88, 24.9, 24.93]);
      sheet.getRow(6).hidden = true;
    },
    'B5',
  );
  const read = (await readCrimpRows(port))!;
  expect(read.questions).toEqual([]);
  expect(
    measuredCrimps(read, 'mm').map(
      ({ row, readings, target, tolerance }) => `${row}: ${readings.join(' ')}, ${target} ± ${tolerance}`,
    ),
  ).toEqual(['5: 24.91 24.88 24.9 24.93, 24.9 ± 0.1', '6: 24.9 24.88 24.9 24.93, 24.9 ± 0.1']);
});
