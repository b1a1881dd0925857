import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'papaparse';
import { blockOf } from '../../../src/workbook/a1';
import type { CellValue } from '../../../src/workbook/workbook';
import { analysisOf } from '../../../src/sheets/analysis/analysisOf';
import { findingLines } from '../../../src/sheets/analysis/finding';
import { findingsOf } from '../../../src/sheets/analysis/findingsOf';
import { NO_CRIMP_FIELDS, readOptionsOf, type CrimpFields } from '../../../src/sheets/crimps/crimpFields';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import { sheetContent } from '../table/sheetContent';
import { sampleCatalogue } from '../duty/sampleCatalogue';

const catalogue = sampleCatalogue();
const file = readFileSync(join(__dirname, '../../../samples/catalogue/crimps.csv'), 'utf8').replace(/^\uFEFF/, '');
const [headings, ...crimps] = parse<string[]>(file, { skipEmptyLines: true }).data;
const of = (row: readonly string[], heading: string) => row[headings!.findIndex(cell => cell.startsWith(heading))]!;
/** Crimp rows of the sample catalogue with dies of their own. */
const rows = crimps.filter((row, index) => crimps.findIndex(other => of(other, 'Die') === of(row, 'Die')) === index).slice(0, 4);
const GATE = 'Machine at the gate';
const HEAD = ['Machine', 'Hose', 'Fitting', 'Die', 'Dial', 'Reading 1 (mm)', 'Reading 2 (mm)'];

/** Four crimps of a row of the catalogue, off by so many hundredths of mm. */
function crimpsOf(row: readonly string[], off: number, machine = GATE, scale = 1): CellValue[][] {
  const target = Number(of(row, 'Crimp diameter'));
  return [-1, 0, 1, 0].map(noise => {
    const reading = Math.round((target + (off + noise) / 100) * 1e4) / 1e4 / scale;
    return [machine, of(row, 'Hose'), of(row, 'Fitting'), of(row, 'Die'), Number(of(row, 'Dial')), reading, reading];
  });
}

/** The third row's crimps made with the die of the fourth: one die for two combinations tells a setting from a die. */
const sharingDie = (table: readonly CellValue[][]) =>
  table.map(row =>
    row.map((cell, column) => (HEAD[column] === 'Die' && cell === of(rows[2]!, 'Die') ? of(rows[3]!, 'Die') : cell)),
  );

function analyse(table: readonly (readonly CellValue[])[], fields: Partial<CrimpFields> = {}) {
  const sheet = crimpSheetOf({ used: sheetContent(table), catalogue }, blockOf('A3')!);
  const analysed = analysisOf(sheet, readOptionsOf({ ...NO_CRIMP_FIELDS, ...fields }));
  return { ...analysed, problems: analysed.report.leftOut.filter(({ reason }) => reason === 'problem') };
}

test('target, tolerance and largest spread come from the crimp row of hose and fitting', () => {
  const { crimps: read, problems, reading } = analyse([HEAD, ...crimpsOf(rows[0]!, 3)]);
  expect(problems).toEqual([]);
  const [crimp] = read;
  expect([crimp!.machine, reading.rows[0]!.target!.from]).toEqual([GATE, 'Catalogue']);
  expect(crimp!.target.toString()).toBe(String(Number(of(rows[0]!, 'Crimp diameter'))));
  expect(crimp!.tolerance.toString()).toBe(String(Number(of(rows[0]!, 'Tolerance'))));
  expect(crimp!.largestSpread!.toString()).toBe(String(Number(of(rows[0]!, 'Largest spread'))));
});

test('turns and next dial come from the Machines table of the crimps’ own machine', () => {
  // Machines of the sample: at the gate 0.016 mm a digit and 0.44 mm a turn, tighter with a higher number; in the van −0.07 and 0.37.
  const all = sharingDie([...rows.slice(0, 3).flatMap(row => crimpsOf(row, 11)), ...crimpsOf(rows[3]!, 11 + 16)]);
  const { analysis } = analyse([HEAD, ...all]);
  const [machine] = analysis.machines;
  expect(machine!.cause.finding).toBe('MACHINE + SETTING');
  const [first, second] = findingsOf(machine!, 'mm');
  const dial = Number(of(rows[3]!, 'Dial'));
  expect(second!.sentence).toContain(`set its dial from ${dial} to ${dial + 10}, crimp one trial piece and measure`);
  expect(first!.actions[0]).toBe(
    'Turn the calibration screw 0.25 turns tighter (0.44 mm a turn, table Machines). The machine’s manual says which way. Check again with one trial crimp.',
  );
  expect(findingLines(second!).join(' ')).toContain('0.016 mm a digit, table Machines');
});

test('on the machine whose higher numbers crimp looser the dial goes the other way', () => {
  const van = 'Machine in the van';
  const crimped = sharingDie([...rows.slice(0, 3).flatMap(row => crimpsOf(row, 0, van)), ...crimpsOf(rows[3]!, 16, van)]);
  // Its dial ends at 60: those of the catalogue are not for it. 0.16 mm ÷ 0.07 mm a digit are 2 digits.
  const all = crimped.map(row => row.map((cell, column) => (HEAD[column] === 'Dial' ? 30 : cell)));
  const { analysis } = analyse([HEAD, ...all]);
  expect(findingsOf(analysis.machines[0]!, 'mm')[0]!.sentence).toContain('set its dial from 30 to 28');
});

test('a machine chosen in the pane counts for rows that name none', () => {
  const all = rows.flatMap(row => crimpsOf(row, 11, ''));
  const { analysis } = analyse([HEAD, ...all], { machine: GATE });
  expect(analysis.machines.map(({ machine }) => machine)).toEqual([GATE]);
  expect(findingsOf(analysis.machines[0]!, 'mm')[0]!.actions[0]).toMatch(/^Turn the calibration screw 0\.25 turns tighter/);
});

test('readings in inches are held against a catalogue in millimetres', () => {
  const inches = HEAD.map(heading => heading.replace('(mm)', '(in)'));
  const { crimps: read, problems, unit } = analyse([inches, ...crimpsOf(rows[0]!, 0, GATE, 25.4)]);
  expect([unit, problems]).toEqual(['in', []]);
  expect(Math.abs(read[1]!.measure.deviation.toNumber())).toBeLessThan(0.00001);
});

test('a pair without crimp data is refused in the catalogue’s own words', () => {
  const [row] = crimpsOf(rows[0]!, 0);
  const { crimps: read, problems } = analyse([HEAD, row!, row!.map((cell, i) => (i === 2 ? 'Fitting nobody made' : cell)), row!]);
  expect(read).toHaveLength(2);
  expect(problems.map(({ sentence }) => sentence).join()).toMatch(/Fitting nobody made/);
});
