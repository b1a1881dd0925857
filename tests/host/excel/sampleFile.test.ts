/** @jest-environment ./tests/quickJsdom.mjs */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { canOpenSample, openSample, sampleAddress } from '../../../src/host/excel/sampleFile';
import { excelApi, refusal, strictExcel } from './strictExcel';

const workshop = readFileSync(join(__dirname, '../../../samples/workshop.xlsx'));
const asked: string[] = [];

/** What stands beside the pane; jsdom itself fetches nothing. */
function serve(status: number): void {
  globalThis.fetch = (async (address: string) => {
    asked.push(address);
    const bytes = new Uint8Array(workshop);
    return { ok: status < 400, status, arrayBuffer: async () => bytes.buffer };
  }) as unknown as typeof fetch;
}

const excel = () => strictExcel({ Sheet1: [] }, { sheet: 'Sheet1', row: 0, column: 0, rows: 1, columns: 1 });

afterEach(() => {
  asked.length = 0;
  refusal.of = [];
  excelApi.supported = [];
});

test('the whole sample from beside the pane becomes a new workbook', async () => {
  serve(200);
  const { written } = excel();
  await openSample();
  expect(asked).toEqual(['http://localhost/samples/workshop.xlsx']);
  expect(sampleAddress()).toBe(asked[0]);
  expect(written).toEqual([`createWorkbook of ${workshop.length} bytes`]);
});

test('a sample that is not there, and a refusal of Excel, are said in words', async () => {
  const { written } = excel();
  serve(404);
  await expect(openSample()).rejects.toThrow('The sample did not load (404).');
  serve(200);
  refusal.of = [/createWorkbook/];
  await expect(openSample()).rejects.toThrow('Excel refused it');
  expect(written).toEqual([]);
});

test('it is offered where Excel has the call and says so', () => {
  excel();
  expect(canOpenSample()).toBe(false);
  excelApi.supported = ['1.8'];
  expect(canOpenSample()).toBe(true);
  delete (globalThis.Excel as { createWorkbook?: unknown }).createWorkbook;
  expect(canOpenSample()).toBe(false);
  delete (globalThis as { Excel?: unknown }).Excel;
  expect(canOpenSample()).toBe(false);
});
