import { chosenTables, loadedCatalogue } from '../../../src/sheets/parts/loadedCatalogue';
import { tablesFromFiles } from '../../../src/sheets/parts/tablesFromFiles';
import { readPartsFile } from '../../../src/host/catalogueFile/readPartsFile';
import type { TableName } from '../../../src/core/catalogue/tables/catalogueTables';

/** Loads files of text as the view Load does, each taken for what its name and headings say. All values are invented: never crimp from them. */
async function loaded(files: Readonly<Record<string, string>>) {
  const picked = Object.entries(files).map(([name, text]) => ({ name, bytes: async () => new TextEncoder().encode(text) }));
  const { tables, refusals } = await tablesFromFiles(readPartsFile, picked, 1, {});
  const taken = new Map(tables.flatMap(({ id, guess }) => (guess ? [[id, guess] as const] : []))) as Map<string, TableName>;
  const read = loadedCatalogue(chosenTables(tables, taken, new Map()), undefined);
  return { ...read, refusals, guesses: tables.map(({ guess }) => guess) };
}

const HOSES = `Hoses of the yard, price list of an invented maker

Hose;Family;Bore (mm);Working pressure (bar);Bend radius (mm);Price per length (per m)
Alder DN 12;Alder;12,7;275;180;8,40
Alder DN 25;Alder;25,4;165;300;16,5
;;;;;
Birch DN 25;Birch;25,4;"1.380";340;31
`;
const FITTINGS = `Fitting\tFamily\tEnd form\tSeries\tBore (in)\tCut-off (mm)\tPrice
Alder cone straight DN 12\tAlder\t24° cone\tL\t1/2\t30.5\t4
Alder flare straight DN 12\tAlder\t37° flare swivel\t\t0.5\t-3\t5
`;
const CRIMPS = `Hose,Fitting,Die,Dial,Smallest diameter (mm),Largest diameter (mm)
Alder DN 12,Alder cone*,D23,310,23.25,23.55
Alder DN 12,Alder flare*,D23,ask,23.25,23.55
`;

test('files with semicolons, tabs and commas, a title, a blank row, decimal commas and thousands points', async () => {
  const { catalogue, reason, refusals, guesses, problems } = await loaded({
    'hose prices.csv': HOSES,
    'fittings.txt': FITTINGS,
    'crimps.csv': CRIMPS,
  });
  expect([reason, refusals, guesses]).toEqual(['', [], ['hoses', 'fittings', 'crimps']]);
  expect(catalogue!.hoses.map(({ hose, bore, workingPressure }) => [hose, Number(bore), Number(workingPressure)])).toEqual([
    ['Alder DN 12', 12.7, 275],
    ['Alder DN 25', 25.4, 165],
    ['Birch DN 25', 25.4, 1380],
  ]);
  expect(catalogue!.fittings.map(({ bore, cutOff }) => [Number(bore), Number(cutOff)])).toEqual([
    [12.7, 30.5],
    [12.7, -3],
  ]);
  expect(
    catalogue!.crimps.map(({ fitting, crimpDiameter, tolerance }) => [fitting, Number(crimpDiameter), Number(tolerance)]),
  ).toEqual([['Alder cone*', 23.4, 0.15]]);
  expect(problems).toMatchObject([{ place: 'crimps.csv, row 3, column D', sentence: 'Dial is "ask", expected a number' }]);
});

test('hoses in two files: what to do is said', async () => {
  const second = HOSES.split('\n').slice(2).join('\n');
  const { reason } = await loaded({
    'hoses a.csv': HOSES,
    'hoses b.csv': second,
    'fittings.txt': FITTINGS,
    'crimps.csv': CRIMPS,
  });
  expect(reason).toMatch(/^Two tables are taken for Hoses\. If both hold hoses, put their rows under one heading row/);
});

const MACHINES = `Machine;Catalogue dials;Die;Hose;Fitting;Dial;Date;By
Gate;yes;;;;;;
Gate;;D23;Alder DN 12;Alder cone straight DN 12;312;14.03.2026;RM
Gate;;D23;Alder DN 12;Alder flare straight DN 12;313,5;2026-03-15 14:30;RM
Gate;;D23;Alder DN 12;Alder cone straight DN 12;315;03/04/2026;RM
`;

test('records of dials: dates in three ways, one that may be read either way round is named with both readings', async () => {
  const files = { 'hose prices.csv': HOSES, 'fittings.txt': FITTINGS, 'crimps.csv': CRIMPS, 'machines.csv': MACHINES };
  const { catalogue, problems } = await loaded(files);
  expect(catalogue!.machines.map(({ machine, dial }) => [machine, dial === undefined ? undefined : Number(dial)])).toEqual([
    ['Gate', undefined],
    ['Gate', 312],
    ['Gate', 313.5],
  ]);
  expect(problems.find(({ place }) => place.startsWith('machines.csv'))).toMatchObject({
    place: expect.stringContaining('row 5'),
    sentence: expect.stringMatching(/2026-04-03 or 2026-03-04|2026-03-04 or 2026-04-03/),
  });
});
