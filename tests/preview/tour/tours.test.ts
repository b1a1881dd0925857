import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { IUniverInstanceService } from '@univerjs/core';
import { headlessWorkbook, type HeadlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { estimator } from '../../../src/preview/tour/estimator';
import { quality } from '../../../src/preview/tour/quality';
import { shopOffice } from '../../../src/preview/tour/shopOffice';
import { showStep } from '../../../src/preview/tour/showStep';
import type { Tour } from '../../../src/preview/tour/tour';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { tabs } from '../../../src/taskpane/app/tabs';
import { builtFunctions } from '../builtFunctions';
import { openedFile } from '../openedFile';

const functions = builtFunctions();
const associated = loadScript(functions.script, functions.sibling);
const PLACES = tabs.flatMap(({ id, views }) => views.map(view => `${id}/${view.id}`));
let open: HeadlessWorkbook | undefined;
afterEach(() => open?.dispose());

/** Goes through a tour; `after` is called behind every step with its number from 1. */
async function walk(
  tour: Tour,
  after: (step: number, cell: (sheet: string, address: string) => Promise<unknown>) => Promise<void>,
) {
  const data = await openedFile(new Uint8Array(readFileSync(join(__dirname, '../../../samples', tour.sample))));
  open = headlessWorkbook(data, hostFunctions(functions.metadata, associated));
  open.univer.__getInjector().get(IUniverInstanceService).focusUnit(data.id);
  const port = new UniverWorkbook(open.univer, open.api);
  await open.calculate();
  const cell = async (sheet: string, address: string) => (await port.read([{ sheet, address }]))[0]!.values[0]![0];
  await after(0, cell);
  for (const [index, step] of tour.steps.entries()) {
    await showStep(port, step);
    await open.calculate();
    expect(PLACES).toContain(step.place);
    expect((await port.selection()).sheet).toBe(step.select.sheet);
    await after(index + 1, cell);
  }
}

test('the estimator’s tour: the list, the row and the handle follow as its words say', async () => {
  const seen: Record<string, unknown>[] = [];
  await walk(estimator, async (step, cell) => {
    seen[step] = {
      handle: await cell('Catalogue', 'B5'),
      cheapest: await cell('Find', 'A13'),
      rating: await cell('Find', 'C13'),
      cut: await cell('Jobs', 'G13'),
      price: await cell('Jobs', 'U13'),
      first: await cell('Jobs', 'U10'),
    };
  });
  expect(seen[1]).toEqual(seen[0]);
  expect(String(seen[0]!.handle)).toMatch(/^CAT-/);
  expect(seen[2]!.rating).toBeGreaterThanOrEqual(260);
  expect(seen[3]!.cut).not.toBe(seen[2]!.cut);
  expect(seen[3]!.price).toBeGreaterThan(seen[2]!.price as number);
  expect(seen[4]!.handle).not.toBe(seen[3]!.handle);
  expect(seen[4]!.first).toBeGreaterThan(seen[3]!.first as number);
  expect(seen[4]!.price).toBe(seen[3]!.price);
});

test('the shop office’s tour: a coupling of another family is said, and the row is right again', async () => {
  const said: unknown[] = [];
  await walk(shopOffice, async (step, cell) => {
    said[step] = await cell('Week', 'M11');
  });
  expect(said[1]).toBe('OK');
  expect(said[2]).toMatch(/famil/i);
  expect(said.slice(3)).toEqual(['OK', 'OK', 'OK']);
});

test('QA’s tour: the findings are what its words say', async () => {
  await walk(quality, async (step, cell) => {
    if (step === 1) expect(await cell('Week 39', 'N10')).toBe('LOOSE');
    if (step === 1) expect(await cell('Week 39', 'K8')).toBe(22.7875);
    if (step === 2) expect(await cell('Week 39', 'K8')).toBe(22.8175);
    if (step === 3) expect(await cell('Week 39', 'T8')).toBe('SETTING');
    if (step === 4) expect(await cell('Week 40', 'T8')).toBe('MACHINE');
    if (step === 5) expect(await cell('Week 42', 'T8')).toBe('NOT ENOUGH DATA');
  });
});
