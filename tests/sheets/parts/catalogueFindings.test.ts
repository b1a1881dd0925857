import type { RangeContent, Workbook } from '../../../src/workbook/workbook';
import { catalogueFindings, type CatalogueFinding } from '../../../src/sheets/parts/catalogueFindings';
import { findingGroups } from '../../../src/sheets/parts/findingGroups';
import { checksSheet } from '../../../src/sheets/parts/checksSheet';
import { dateColumns, oldPrices } from '../../../src/sheets/parts/oldPrices';
import { usableCatalogue } from '../../../src/sheets/catalogue/usableCatalogue';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { demoQuotes } from '../quote/demoQuotes';

type Sheets = Record<string, FakeCell[][]>;

const found = (sheets: Sheets) => usableCatalogue(fakeWorkbook(sheets, { sheet: 'Jobs', address: 'A1' }).workbook);
const message = (findings: readonly CatalogueFinding[]) =>
  findings.map(({ kind, part, at }) => [kind, part, `${at.sheet}!${at.address}`]);

/** The small catalogue with one more column or cell. */
function changed(change: (sheets: Sheets) => void): Sheets {
  const sheets = demoQuotes();
  change(sheets);
  return sheets;
}

test('parts without price, without working pressure and without crimp data lead to their cells', async () => {
  // Of the small catalogue: Willow has no price and no crimp row; the oddment has no price; the flare has no rating; Birch ferrule is no coupling.
  expect(message(catalogueFindings(await found(demoQuotes())))).toEqual([
    ['price', 'Willow DN 25', 'Hoses!M5'],
    ['price', 'Alder oddment', 'Fittings!M8'],
    ['rating', 'Alder flare straight DN 12', 'Fittings!K4'],
    ['crimp', 'Willow DN 25', 'Hoses!A5'],
    // There is no rate minutes per test.
    ['note', 'Rates', 'Rates!A1'],
  ]);
});

test('a rate without which no cost is known leads to the table Rates', async () => {
  const without = (name: string) => changed(sheets => void (sheets.Rates = sheets.Rates!.filter(([rate]) => rate !== name)));
  expect(message(catalogueFindings(await found(without('set-up minutes'))))).toContainEqual([
    'rate',
    'set-up minutes',
    'Rates!A1',
  ]);
  expect(message(catalogueFindings(await found(without('minimum charge')))).map(([kind]) => kind)).not.toContain('rate');
});

test('a pattern gives crimp data to fittings of the hose’s own family and size only', async () => {
  const sheets = changed(({ Fittings }) => Fittings!.push(['Alder wide', 'Alder', '24° cone', '', '', 0, 'DN 31', 31.8, 40]));
  expect(message(catalogueFindings(await found(sheets)))).toContainEqual(['crimp', 'Alder wide', 'Fittings!A9']);
});

test('a row without cut-off, other rows left out and a ferrule that is no part are told apart', async () => {
  const sheets = changed(({ Fittings, Hoses, Crimps }) => {
    Fittings![1]![8] = '';
    Hoses![1]![4] = 'wide';
    Crimps![5]![2] = 'Elm ferrule';
  });
  const findings = catalogueFindings(await found(sheets));
  expect(message(findings)).toEqual(
    expect.arrayContaining([
      ['cutOff', 'Fittings row 2', 'Fittings!I2'],
      ['leftOut', 'Hoses row 2', 'Hoses!E2'],
      ['ferrule', 'Elm ferrule', 'Crimps!C6'],
    ]),
  );
  expect(findings.find(({ kind }) => kind === 'cutOff')!.sentence).toMatch(/Cut-off is blank, .* the row is left out/);
});

describe('what looks wrong in rows that are used', () => {
  // Sixty crimp rows of a hose that Hoses does not list, and one hose whose bend radius is below 2 × its outside diameter.
  const strayed = () =>
    changed(({ Crimps, Hoses }) => {
      Hoses!.forEach((row, index) => (row[14] = index === 0 ? 'Outside diameter (mm)' : 20));
      Hoses![1]![6] = 30;
      for (let row = 0; row < 60; row++) Crimps!.push(['Yew DN 12', `Alder ${row}*`, '', 'D23', 310, 23.4, 0.15, '', '', '']);
    });
  const wide = (sheets: Sheets): Sheets => {
    const [, cell] = sheets.Parts![0]!;
    const formula = (cell as { formula: string }).formula.replace('Crimps!A1:P40', 'Crimps!A1:P90');
    return { ...sheets, Parts: [['Catalogue', { formula, value: '' }]] };
  };

  test('each note leads to its cell', async () => {
    const notes = catalogueFindings(await found(wide(strayed()))).filter(({ kind }) => kind === 'note');
    expect(notes.map(({ part, sentence, at }) => [part, sentence, at.address])).toContainEqual([
      'Hoses row 2',
      'Bend radius is 30, under 2 outside diameters (40)',
      'G2',
    ]);
    expect(notes.filter(({ sentence }) => sentence.startsWith('Hose "Yew DN 12"'))).toHaveLength(60);
  });

  test('one cause is told once, with all its rows, in the pane and on the sheet', async () => {
    const findings = catalogueFindings(await found(wide(strayed())));
    const group = findingGroups(findings).filter(({ sentence }) => sentence.startsWith('Hose "Yew DN 12"'));
    expect(group).toMatchObject([
      { part: 'Crimps', cells: [{ label: 'rows 7–66', at: { sheet: 'Crimps', address: 'A7:A66' } }] },
    ]);
    const rows = checksSheet('Checks', findings, 'CAT', '2026-10-05').flatMap(change =>
      change.kind === 'values' ? change.values.filter(row => String(row[5]).startsWith('Hose "Yew DN 12"')) : [],
    );
    expect(rows).toEqual([
      ['☐', 'Check (the rows are used)', 'Crimps', 'A7:A66', 'Crimps, 60 rows', 'Hose "Yew DN 12" is not in the table Hoses'],
    ]);
  });

  test('rows apart are named apart; parts without price stay one finding each', async () => {
    const sheets = changed(({ Fittings }) => [1, 2, 4].forEach(row => (Fittings![row]![8] = '')));
    const groups = findingGroups(catalogueFindings(await found(sheets)));
    expect(groups.find(({ kind }) => kind === 'cutOff')!.cells.map(({ label }) => label)).toEqual(['rows 2–3', 'row 5']);
    expect(groups.filter(({ kind }) => kind === 'price').map(({ part }) => part)).toEqual(['Willow DN 25', 'Alder oddment']);
  });
});

describe('old prices', () => {
  const dated = () =>
    changed(({ Fittings }) => {
      ['Price date', '2024-03-01', '2026-02-01', '', '2026-01-01', '2025-12-31', '2026-05-05', ''].forEach(
        (day, row) => (Fittings![row]![13] = day),
      );
    });

  test('a column of dates that the catalogue does not know is offered, others are not', async () => {
    expect(dateColumns(await found(demoQuotes()))).toEqual([]);
    expect(dateColumns(await found(dated()))).toEqual([{ table: 'fittings', heading: 'Price date', column: 13 }]);
  });

  test('prices before the day and prices without a day are found; parts without price are not', async () => {
    const catalogue = await found(dated());
    const old = oldPrices(catalogue, dateColumns(catalogue), '2026-01-01');
    expect(old.map(({ part, sentence, at }) => [part, sentence, at.address])).toEqual([
      ['Alder cone straight DN 12', 'price of 2024-03-01', 'N2'],
      ['Alder flare straight DN 12', 'no Price date', 'N4'],
      ['Birch flange DN 25', 'price of 2025-12-31', 'N6'],
    ]);
    expect(oldPrices(catalogue, dateColumns(catalogue), '')).toEqual([]);
  });

  test('numbers are dates where their format says so, and only there', async () => {
    const withNumbers = changed(({ Guards, Hoses }) => {
      expect(Guards).toBeUndefined();
      ['Listed', 46_000, 46_100, 46_200, 46_300].forEach((day, row) => (Hoses![row]![14] = day));
    });
    const { workbook } = fakeWorkbook(withNumbers, { sheet: 'Jobs', address: 'A1' });
    const format = (content: RangeContent): RangeContent => ({
      ...content,
      formats: content.formats.map(row => row.map((_, column) => (column === 14 ? 'dd/mm/yyyy' : 'General'))),
    });
    const formatted: Workbook = { ...workbook, read: async ranges => (await workbook.read(ranges)).map(format) };
    expect(dateColumns(await usableCatalogue(workbook))).toEqual([]);
    expect(dateColumns(await usableCatalogue(formatted))).toMatchObject([{ table: 'hoses', heading: 'Listed' }]);
  });
});

test('the sheet of findings has a row each, on a sheet of its own', async () => {
  const { catalogue } = await found(demoQuotes());
  const changes = checksSheet('Checks', catalogueFindings(await found(demoQuotes())), catalogue.handle, '2026-10-05');
  expect(changes[0]).toEqual({ kind: 'addSheet', sheet: 'Checks' });
  expect(changes.find(change => change.kind === 'values' && change.values.length === 6)).toMatchObject({
    at: { address: 'A4:F9' },
    values: expect.arrayContaining([['☐', 'Without price', 'Hoses', 'M5', 'Willow DN 25', 'no price per length']]),
  });
});

test('tables in the host’s own sense are followed by their names', async () => {
  const sheets = changed(({ Parts }) => {
    Parts![0]![1] = { formula: '=HOSE.CATALOGUE(tblHoses[#All],TBLFITTINGS[#All],Crimps!A1:J9)', value: '' };
  });
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Jobs', address: 'A1' });
  const tables: Workbook['tables'] = async sheet =>
    sheet === 'Hoses' || sheet === 'Fittings' ? [{ sheet, address: 'A1:N8', name: `tbl${sheet}` }] : [];
  const { ranges, catalogue } = await usableCatalogue({ ...workbook, tables });
  expect(ranges.fittings).toMatchObject({ sheet: 'Fittings', address: 'A1:N8' });
  expect(catalogue.hoses).toHaveLength(4);
});

test('tables that the pane cannot follow are named, and a catalogue that cannot be read says why', async () => {
  const other = (formula: string) => changed(({ Parts }) => (Parts![0]![1] = { formula, value: '' }));
  await expect(found(other('=HOSE.CATALOGUE(Hoses!A1:N9,Fittings!A1:N9,Listed[#All])'))).rejects.toThrow(
    'cannot read the crimps',
  );
  await expect(found(other('=HOSE.CATALOGUE(Hoses!A2:N9,Fittings!A1:N9,Crimps!A1:J9)'))).rejects.toThrow(
    /The catalogue cannot be read: Hoses has no heading/,
  );
});
