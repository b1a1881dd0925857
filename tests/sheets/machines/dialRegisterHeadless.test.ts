import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { IUniverInstanceService } from '@univerjs/core';
import { Decimal } from '../../../src/core/units/decimal';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { headlessWorkbook, type HeadlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { planDial } from '../../../src/sheets/machines/planDial';
import { eventually } from '../../eventually';
import { builtFunctions } from '../../preview/builtFunctions';

const functions = builtFunctions();
const sample = join(__dirname, '../../../samples/catalogue.xlsx');
let open: HeadlessWorkbook;
let port: UniverWorkbook;

beforeAll(async () => {
  const { data } = await readXlsx(readFileSync(sample));
  open = headlessWorkbook(data, hostFunctions(functions.metadata, loadScript(functions.script, functions.sibling)));
  // Undo works on the workbook that has the focus; on the page a click gives it.
  open.univer.__getInjector().get(IUniverInstanceService).focusUnit(data.id);
  port = new UniverWorkbook(open.univer, open.api);
  await open.calculate();
});
afterAll(() => open.dispose());

const handle = async () => (await port.read([{ sheet: 'Catalogue', address: 'B5' }]))[0]!.values[0]![0];

/** Dial and its source of the job line that the sample looks up for a hose, a coupling and a machine. */
async function setUpOf(hose: string) {
  const jobs = (await port.used('Jobs'))!;
  const headings = jobs.values.find(row => row.includes('Dial from'))!;
  const row = jobs.values.find(cells => cells[headings.indexOf('Hose')] === hose)!;
  const cell = (heading: string) => row[headings.indexOf(heading)];
  return {
    fitting: String(cell('Coupling A')),
    machine: String(cell('Machine')),
    dial: Number(cell('Dial (digits)')),
    from: cell('Dial from'),
  };
}

test('a recorded dial changes the Catalogue’s handle, and CRIMPSETUP in the sheet takes it at once; one undo takes it back', async () => {
  const hose = 'Alder DN 6';
  const before = await setUpOf(hose);
  const handleBefore = await handle();
  expect(before.from).toBe('CATALOGUE');
  const { machine, fitting } = before;
  const dial = new Decimal(before.dial + 3);
  const plan = await planDial(port, { machine, die: '', hose, fitting, dial, date: '2026-10-05', note: '' }, '2026-10-05');
  if (plan.kind !== 'ready') throw new Error(plan.sentence);
  await port.write(plan.writing.changes);
  await eventually(async () => expect(await setUpOf(hose)).toEqual({ ...before, dial: before.dial + 3, from: 'MACHINE' }));
  expect(await handle()).toMatch(/^CAT-/);
  expect(await handle()).not.toBe(handleBefore);

  await open.api.undo();
  await eventually(async () => expect(await setUpOf(hose)).toEqual(before));
  expect(await handle()).toBe(handleBefore);
});

test('where the range that the Catalogue reads is full, it is extended, and the sheet follows as well', async () => {
  const hose = 'Alder DN 6';
  const before = await setUpOf(hose);
  const [cell] = await port.read([{ sheet: 'Catalogue', address: 'B5' }]);
  const machines = (await port.used('Machines'))!;
  const full = cell!.formulas[0]![0]!.replace(/(Machines!A1:[A-Z]+)\d+/, `$1${machines.values.length}`);
  await port.write([{ kind: 'formulas', at: { sheet: 'Catalogue', address: 'B5' }, formulas: [[full]] }]);
  await eventually(async () => expect(await handle()).toMatch(/^CAT-/));
  const { machine, fitting } = before;
  const dial = new Decimal(before.dial - 2);
  const plan = await planDial(port, { machine, die: '', hose, fitting, dial, date: '2026-10-06', note: '' }, '2026-10-06');
  if (plan.kind !== 'ready') throw new Error(plan.sentence);
  expect(plan.message.join(' ')).toMatch(/it will read A1:/);
  await port.write(plan.writing.changes);
  await eventually(async () => expect(await setUpOf(hose)).toEqual({ ...before, dial: before.dial - 2, from: 'MACHINE' }));
});

test('without a table Machines one is made, and the sheet’s look-ups take the dial from it', async () => {
  const hose = 'Alder DN 6';
  const at = { sheet: 'Catalogue', address: 'B5' };
  const [cell] = await port.read([at]);
  const without = cell!.formulas[0]![0]!.replace(/'?Machines'?!\$?A\$?1:\$?[A-Z]+\$?\d+/, '');
  expect(without).not.toBe(cell!.formulas[0]![0]);
  await port.write([
    { kind: 'formulas', at, formulas: [[without]] },
    { kind: 'removeSheet', sheet: 'Machines' },
  ]);
  await eventually(async () => expect((await setUpOf(hose)).from).toMatchObject({ error: '#N/A' }));
  const { fitting } = await setUpOf(hose);
  const dial = new Decimal(345);
  const plan = await planDial(
    port,
    { machine: 'Machine at the gate', die: '', hose, fitting, dial, date: '2026-10-07', note: '' },
    '2026-10-07',
  );
  if (plan.kind !== 'ready') throw new Error(plan.sentence);
  await port.write(plan.writing.changes);
  await eventually(async () => expect(await setUpOf(hose)).toMatchObject({ dial: 345, from: 'MACHINE' }));
});
