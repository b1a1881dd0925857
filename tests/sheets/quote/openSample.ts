import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { IUniverInstanceService } from '@univerjs/core';
import type { CellValue, Change, RangeContent } from '../../../src/workbook/workbook';
import { savedWorkbook } from '../../../src/preview/host/savedWorkbook';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { headlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { writeXlsx } from '../../../src/preview/xlsx/writeXlsx';
import { builtFunctions } from '../../preview/builtFunctions';
import { openedFile } from '../../preview/openedFile';

const functions = builtFunctions();
const associated = loadScript(functions.script, functions.sibling);
const FILE = join(__dirname, '../../../samples/catalogue.xlsx');

/** The sample catalogue with its job lines, open in the try-out spreadsheet's engine without a page. */
export async function openSample(bytes: Uint8Array = new Uint8Array(readFileSync(FILE))) {
  const data = await openedFile(bytes);
  const open = headlessWorkbook(data, hostFunctions(functions.metadata, associated));
  open.univer.__getInjector().get(IUniverInstanceService).focusUnit(data.id);
  const port = new UniverWorkbook(open.univer, open.api);
  await open.calculate();
  let isOpen = true;
  return {
    port,
    dispose() {
      if (isOpen) open.dispose();
      isOpen = false;
    },
    calculate: () => open.calculate(),
    /** Writes and calculates everything again. */
    async write(changes: readonly Change[]) {
      await port.write(changes);
      await open.calculate();
    },
    /** The cell of a sheet. */
    async cell(sheet: string, address: string): Promise<CellValue> {
      return (await port.read([{ sheet, address }]))[0]!.values[0]![0]!;
    },
    async content(sheet: string): Promise<RangeContent> {
      return (await port.used(sheet))!;
    },
    /** The workbook as a file. */
    save: (): Promise<Uint8Array> => writeXlsx(savedWorkbook(open.univer, open.api)),
  };
}
