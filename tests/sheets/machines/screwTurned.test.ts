import { readMachineChanges } from '../../../src/sheets/crimps/readMachineChanges';
import { checkWriting } from '../../../src/sheets/machines/checkWriting';
import { machineCheck, type CheckForm } from '../../../src/sheets/machines/machineCheck';
import { turnsMade, type ScrewTurned } from '../../../src/sheets/machines/screwTurned';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const form: CheckForm = {
  unit: 'mm',
  machine: 'Anvil right',
  setUp: 'ring 3',
  expected: '41.30',
  readings: ['41.4', '41.4', '41.4', '41.4'],
  perTurn: '0.44',
  leaveAlone: '',
};

/** What the log says after a check, and whether its reader sees a change of the machine. */
async function logged(said: ScrewTurned, part: Partial<CheckForm> = {}) {
  const { workbook } = fakeWorkbook({ Jobs: [['x']] }, { sheet: 'Jobs', address: 'A1' });
  const result = machineCheck({ ...form, ...part });
  const check = { form, result, by: '', note: 'ring worn', turned: turnsMade(result, said) };
  await workbook.write((await checkWriting(workbook, check)).changes);
  const [headings, row] = (await workbook.used('Machine log'))!.values;
  const at = (heading: string) => row![headings!.indexOf(heading)];
  const changes = await readMachineChanges(workbook);
  return { turns: at('Turns, + is tighter'), note: String(at('Note')), changed: changes.map(({ machine }) => machine) };
}

test.each([
  ['no', '', {}, '', /0\.23 turns tighter, then check again\. The screw was not turned\. ring worn$/, []],
  ['yes', '', {}, 0.23, /The screw was turned 0\.23 turns tighter\. ring worn$/, ['Anvil right']],
  ['yes', '0.1', {}, 0.1, /0\.23 turns tighter, then check again\. The screw was turned 0\.1 turns tighter\./, ['Anvil right']],
  ['yes', '-0.5', {}, -0.5, /turned 0\.5 turns looser/, ['Anvil right']],
  ['yes', '0.25', { perTurn: '' }, 0.25, /turned 0\.25 turns tighter/, ['Anvil right']],
  ['', '', { leaveAlone: '0.1' }, '', /small enough to leave alone\. ring worn$/, []],
  ['', '', { expected: '41.4' }, '', /^The machine crimps as expected\. ring worn$/, []],
] as const)('screw turned: %s %s, of %j: the log says %s', async (answer, turns, part, written, note, changed) => {
  const found = await logged({ answer, turns }, part);
  expect([found.turns, found.changed]).toEqual([written, changed]);
  expect(found.note).toMatch(note);
});

test.each([
  ['', '', {}, /^was the screw turned is not answered/],
  ['yes', '', { perTurn: '' }, /^turns made is blank: enter how far/],
  ['yes', '0', {}, /^turns made is 0: it must not be 0/],
  ['yes', 'a bit', {}, /^turns made is "a bit"/],
] as const)('what is not said is asked for: %s %s', (answer, turns, part, sentence) => {
  expect(() => turnsMade(machineCheck({ ...form, ...part }), { answer, turns })).toThrow(sentence);
});
