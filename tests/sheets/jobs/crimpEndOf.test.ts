import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'papaparse';
import { Decimal } from '../../../src/core/units/decimal';
import { catalogueFromCells } from '../../../src/cells/catalogueFromCells';
import { benchSteps, diameterLimits, sourcesOf, stopsOf } from '../../../src/sheets/benchcard/benchSteps';
import { limitsText, smallText } from '../../../src/sheets/table/smallText';
import { sheetContent } from '../table/sheetContent';
import { cardsOf } from './demoCards';

/** A table of the sample catalogue, as its file has it. */
function table(name: string): string[][] {
  const text = readFileSync(join(__dirname, `../../../samples/catalogue/${name}.csv`), 'utf8').replace(/^\uFEFF/, '');
  return parse<string[]>(text, { skipEmptyLines: true }).data;
}

const tables = { hoses: table('hoses'), fittings: table('fittings'), crimps: table('crimps') };
const catalogue = catalogueFromCells([tables.hoses, tables.fittings, tables.crimps, table('machines'), table('rates')]);
const crimpRow = tables.crimps[1]!;
const of = (row: string[], heading: string) => row[tables.crimps[0]!.findIndex(cell => cell.startsWith(heading))]!;
const hose = of(crimpRow, 'Hose');
const fitting = of(crimpRow, 'Fitting');

const jobs = (...rows: readonly (readonly (string | number)[])[]) =>
  sheetContent([['Line', 'Hose', 'Fitting A', 'Fitting B', 'Quantity', 'Overall length (mm)', 'Cut length (mm)'], ...rows]);
const read = (from: ReturnType<typeof jobs>, machine = '') => cardsOf(from, catalogue, machine);
/** A cut length that agrees with the catalogue's cut-offs. */
const cutOff = Number(
  tables.fittings.find(row => row[0] === fitting)![tables.fittings[0]!.findIndex(cell => cell.startsWith('Cut-off'))],
);
const line = [1, hose, fitting, fitting, 2, 800, 800 - 2 * cutOff] as const;

test('a card has the set-up that stands in the catalogue’s own row, with its limits and where it comes from', () => {
  const [card] = read(jobs(line));
  const [diameter, tolerance] = [new Decimal(of(crimpRow, 'Crimp diameter')), new Decimal(of(crimpRow, 'Tolerance'))];
  expect(card!.ends[0]).toMatchObject({
    die: of(crimpRow, 'Die'),
    dial: of(crimpRow, 'Dial'),
    ferrule: of(crimpRow, 'Ferrule'),
    source: `catalogue, row ${fitting}`,
    angle: 0,
  });
  expect(card!.ends[0].smallest!.eq(diameter.minus(tolerance))).toBe(true);
  expect(card!.ends[0].largest!.eq(diameter.plus(tolerance))).toBe(true);
  expect(card!.ends[0].insertionDepth!.eq(of(crimpRow, 'Insertion depth'))).toBe(true);
  expect(stopsOf(card!)).toEqual([]);
});

test('what the row of the data says besides stands on the card, also where the sheet has a set-up of its own', () => {
  const note = of(crimpRow, 'Note');
  expect(note).toMatch(/never crimp/);
  const [card] = read(jobs(line));
  expect(sourcesOf(card!)).toBe(
    `Set-up from A: catalogue, row ${fitting}; B: catalogue, row ${fitting}. Note of the data: A and B: ${note}.`,
  );
  const [a, b] = card!.ends;
  expect(
    sourcesOf({
      ...card!,
      ends: [
        { ...a, source: 'job sheet' },
        { ...b, remark: undefined },
      ],
    }),
  ).toBe(`Set-up from A: job sheet; B: catalogue, row ${fitting}. Note of the data: A: ${note}.`);
});

test('the rating is that of the weakest part', () => {
  const [card] = read(jobs(line));
  const rating = (rows: string[][], name: string) =>
    Number(rows.find(row => row[0] === name)![rows[0]!.findIndex(cell => cell.startsWith('Working pressure'))]);
  expect(card!.workingPressure!.toNumber()).toBe(Math.min(rating(tables.hoses, hose), rating(tables.fittings, fitting)));
});

test('a pair without crimp data stops the card', () => {
  const stranger = tables.fittings.find(row => row[0]!.startsWith('Rowan') && row[2] !== 'ferrule')![0]!;
  const [card] = read(jobs([1, hose, fitting, stranger, 2, 800, 700]));
  expect(stopsOf(card!).join('\n')).toMatch(/End B: no crimp data for .*: do not assemble/);
});

test('on an inch sheet the crimp diameter is in inches (25.4 mm, NIST SP 811)', () => {
  const [card] = read(
    sheetContent([
      ['Hose', 'Fitting A', 'Fitting B', 'Cut length (in)'],
      [hose, fitting, fitting, '30 1/2'],
    ]),
  );
  expect(card!.unit).toBe('in');
  expect(card!.ends[0].diameter!.eq(new Decimal(of(crimpRow, 'Crimp diameter')).div('25.4'))).toBe(true);
});

/** The small tables of an invented maker in inches, and one machine whose dials are its own. */
const inchCatalogue = (...machines: readonly (readonly (string | number)[])[]) =>
  catalogueFromCells([
    [
      ['Hose', 'Family', 'Bore (in)', 'Working pressure (psi)'],
      ['Hazel 8', 'Hazel', 0.5, 4000],
    ],
    [
      ['Fitting', 'Family', 'End form', 'Bore (in)', 'Cut-off (in)', 'Insertion depth (in)', 'Working pressure (psi)', 'Angle'],
      ['Hazel flare 8', 'Hazel', '37° flare', 0.5, 1, 1.25, 4000, 0],
    ],
    [
      ['Hose', 'Fitting', 'Die', 'Dial', 'Smallest diameter (in)', 'Largest diameter (in)', 'Insertion depth (in)'],
      ['Hazel 8', 'Hazel flare 8', 'D23', 413, 0.9778, 0.9908, 1.25],
    ],
    [['Machine', 'Hose', 'Fitting', 'Die', 'Dial', 'Date', 'Step (in per digit)', 'Catalogue dials'], ...machines],
    [],
  ] as never);
const hazel = sheetContent([
  ['Hose', 'Fitting A', 'Fitting B', 'Quantity', 'Overall length (mm)', 'Cut length (mm)'],
  ['Hazel 8', 'Hazel flare 8', 'Hazel flare 8', 2, 1000, 949],
]);

test('limits in inches are halved about their middle and exact on a sheet in millimetres: ± 0.0065 in = ± 0.1651 mm (NIST SP 811)', () => {
  const [end] = cardsOf(hazel, inchCatalogue())[0]!.ends;
  expect([`${end.diameter}`, `${end.smallest}`, `${end.largest}`]).toEqual(['25.00122', '24.83612', '25.16632']);
  // In text never wider than they are.
  expect(diameterLimits(end, 'mm')).toBe('24.837 … 25.166');
  expect(smallText(new Decimal('0.0065').times('25.4'), 'mm')).toBe('0.165');
  expect(limitsText(new Decimal('23.2'), new Decimal('23.6'), 3)).toBe('23.2 … 23.6');
});

describe('a machine for which the catalogue’s dials are not', () => {
  const catalogueOfOwn = inchCatalogue(
    ['Old press', '', '', '', '', '', 0.001, 'no'],
    ['Old press', 'Hazel 8', 'Hazel flare 8', 'D25', 300, '2026-01-05', '', ''],
  );
  test('has no dial: the card asks for a trial piece instead of giving another machine’s dial', () => {
    const [card] = cardsOf(hazel, catalogueOfOwn, 'Old press');
    expect(card!.ends[0].dial).toBeUndefined();
    expect(card!.ends[0].trial).toMatch(/^no dial for Old press: make ONE trial piece first.*$/);
    expect(stopsOf(card!)).toEqual([]);
    expect(sourcesOf(card!)).toMatch(/End A: no dial for Old press: make ONE trial piece first/);
  });
  test('a machine that is not in the catalogue stops the card, which still names die and diameter', () => {
    const [card] = cardsOf(hazel, catalogueOfOwn, 'New press');
    expect(stopsOf(card!)[0]).toMatch(/"New press" is not in the catalogue/);
    expect(card!.ends[0]).toMatchObject({ die: 'D23', dial: undefined });
  });
});

test('the pressure is the weakest part’s: a higher one typed in the sheet does not count, a lower one does', () => {
  const typed = (pressure: number) =>
    sheetContent([
      ['Hose', 'Fitting A', 'Fitting B', 'Quantity', 'Overall length (mm)', 'Working pressure (psi)'],
      ['Hazel 8', 'Hazel flare 8', 'Hazel flare 8', 2, 1000, pressure],
    ]);
  const pressureOf = (pressure: number) => `${cardsOf(typed(pressure), inchCatalogue())[0]!.workingPressure}`;
  expect([pressureOf(8000), pressureOf(3000)]).toEqual(['4000', '3000']);
});

test('an end that is plain hose is not crimped, and a hose alone is only cut', () => {
  const rows = sheetContent([
    ['Hose', 'Fitting A', 'Fitting B', 'Quantity', 'Length (mm)'],
    ['Hazel 8', '', '', 2, 900],
  ]);
  const [card] = cardsOf(rows, inchCatalogue());
  expect(card!.ends.map(({ isPlain }) => isPlain)).toEqual([true, true]);
  expect(stopsOf(card!)).toEqual([]);
  const steps = benchSteps(card!, { factor: new Decimal(2), hold: '', source: '' }).map(({ name }) => name);
  expect(steps).toEqual(['Cut', 'Clean', 'Slide on', 'Flush', 'Tag']);
});
