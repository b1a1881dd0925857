import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'papaparse';
import { Decimal } from '../../../src/core/units/decimal';
import { catalogueFromCells } from '../../../src/cells/catalogueFromCells';
import { sourcesOf, stopsOf } from '../../../src/sheets/benchcard/benchSteps';
import { cardTable } from '../../../src/sheets/jobs/cardHeadings';
import { catalogueLookUp } from '../../../src/sheets/jobs/catalogueLookUp';
import { readCards } from '../../../src/sheets/jobs/readCards';
import { sheetContent } from '../table/sheetContent';

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
  cardTable(
    sheetContent([['Line', 'Hose', 'Fitting A', 'Fitting B', 'Quantity', 'Overall length (mm)', 'Cut length (mm)'], ...rows]),
  )!;
const read = (from: ReturnType<typeof jobs>, unit: 'mm' | 'in' = 'mm') =>
  readCards(from, {
    unit,
    step: new Decimal(unit === 'mm' ? 1 : '0.0625'),
    pressureUnit: 'bar',
    lookUp: catalogueLookUp(catalogue),
  });

test('a card has the set-up that stands in the catalogue’s own row, with its limits and where it comes from', () => {
  const [card] = read(jobs([1, hose, fitting, fitting, 2, 800, 753]));
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
  const [card] = read(jobs([1, hose, fitting, fitting, 2, 800, 753]));
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
  const [card] = read(jobs([1, hose, fitting, fitting, 2, 800, 753]));
  const rating = (rows: string[][], name: string) =>
    Number(rows.find(row => row[0] === name)![rows[0]!.findIndex(cell => cell.startsWith('Working pressure'))]);
  expect(card!.workingPressure!.toNumber()).toBe(Math.min(rating(tables.hoses, hose), rating(tables.fittings, fitting)));
});

test('a pair without crimp data stops the card', () => {
  const stranger = tables.fittings.find(row => row[0]!.startsWith('Rowan') && row[2] !== 'ferrule')![0]!;
  const [card] = read(jobs([1, hose, fitting, stranger, 2, 800, 753]));
  expect(stopsOf(card!).join('\n')).toMatch(/End B: no crimp data for .*: do not assemble/);
});

test('on an inch sheet the crimp diameter is in inches (25.4 mm, NIST SP 811)', () => {
  const inches = cardTable(
    sheetContent([
      ['Hose', 'Fitting A', 'Fitting B', 'Cut length (in)'],
      [hose, fitting, fitting, '30 1/2'],
    ]),
  )!;
  const [card] = read(inches, 'in');
  expect(
    card!.ends[0]
      .diameter!.minus(new Decimal(of(crimpRow, 'Crimp diameter')).div('25.4'))
      .abs()
      .lte('0.00005'),
  ).toBe(true);
});
