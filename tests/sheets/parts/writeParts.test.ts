import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { writeParts } from '../../../src/sheets/parts/writeParts';
import { treeTables, withCell, withRows } from '../../core/catalogue/treeCatalogue';
import { LiveWorkbook } from './liveWorkbook';
import { loadThrough } from './loadThrough';
import { csvOf, FORMULA, standingWorkbook } from './standingWorkbook';

const threeFiles = {
  'hoses.csv': csvOf(treeTables.hoses),
  'fittings.csv': csvOf(treeTables.fittings),
  'crimps.csv': csvOf(treeTables.crimps),
};

describe('the first load', () => {
  test('into an empty workbook makes a sheet a table, the Catalogue cell and its name, in one batch', async () => {
    const workbook = new LiveWorkbook({ Sheet1: [] });
    const { loaded, plan } = await loadThrough(workbook, threeFiles);
    expect(loaded.problems).toEqual([]);
    await writeParts(workbook, await plan());
    expect(workbook.written).toHaveLength(1);
    expect(await workbook.sheets()).toEqual(['Sheet1', 'Hoses', 'Fittings', 'Crimps', 'Catalogue']);
    expect(workbook.formulaAt('Catalogue', 'A3')).toBe('=HOSE.CATALOGUE(Hoses!A1:N55,Fittings!A1:M58,Crimps!A1:J56)');
    expect(await workbook.names()).toEqual([{ name: 'Catalogue', at: { sheet: 'Catalogue', address: 'A3' } }]);
    const standing = await workbookCatalogue(workbook);
    expect(standing).toMatchObject({ isNamed: true, shown: loaded.catalogue!.handle, reason: '' });
    expect(standing!.catalogue!.handle).toBe(loaded.catalogue!.handle);
  });

  test('leaves sheets alone that have the names of tables, and uses one that is empty', async () => {
    const workbook = new LiveWorkbook({ hoses: [['my own hoses']], Fittings: [], Catalogue: [['my list']] });
    const { plan, loaded } = await loadThrough(workbook, threeFiles);
    const planned = await plan();
    expect(planned.message.join(' ')).toMatch(/a sheet Hoses is there already and stays as it is/);
    await writeParts(workbook, planned);
    expect(await workbook.sheets()).toEqual(['hoses', 'Fittings', 'Catalogue', 'Hoses data', 'Crimps', 'Catalogue 2']);
    expect(workbook.shown('hoses')).toEqual([['my own hoses']]);
    expect(workbook.shown('Catalogue')).toEqual([['my list']]);
    expect((await workbookCatalogue(workbook))!.catalogue!.handle).toBe(loaded.catalogue!.handle);
  });

  test('shows fractions of the rates in per cent, cell by cell, and money as it is', async () => {
    const workbook = new LiveWorkbook({ Sheet1: [] });
    const rates = csvOf([
      ['Rate', 'Value'],
      ['labour per hour', 60],
      ['scrap fraction', 0.04],
      ['minutes per cut', 0.8],
    ]);
    const { plan } = await loadThrough(workbook, { ...threeFiles, 'rates.csv': rates });
    const { changes } = (await plan()).tables.find(({ table }) => table === 'rates')!;
    const formats = changes.flatMap(change => (change.kind === 'format' ? [[change.at.address, change.numberFormat]] : []));
    expect(formats).toEqual([['B3', '0.0 %']]);
  });

  test('says which tables are still missing', async () => {
    const { loaded } = await loadThrough(new LiveWorkbook({ Sheet1: [] }), { 'hoses.csv': threeFiles['hoses.csv'] });
    expect(loaded.reason).toMatch(/no table Fittings, no table Crimps yet\. Load them as well/);
  });
});

describe('replacing a catalogue', () => {
  const longer = withRows('hoses', ['Cedar DN 6', 'Cedar', null, null, 6.3, 200]).hoses!;

  test('rewrites the sheet in place, copies its old values to a dated sheet, and makes room in the formula', async () => {
    const workbook = standingWorkbook();
    const before = workbook.shown('Hoses');
    const { plan, loaded } = await loadThrough(workbook, { 'new hoses.csv': csvOf(longer) });
    expect(loaded.changes).toEqual([{ kind: 'added', table: 'hoses', name: 'Cedar DN 6' }]);
    await writeParts(workbook, await plan());
    expect(workbook.written).toHaveLength(1);
    expect(workbook.shown('Hoses 2026-11-25')).toEqual(before);
    expect(workbook.shown('Hoses')!.at(-1)!.slice(0, 6)).toEqual(['Cedar DN 6', 'Cedar', '', '', 6.3, 200]);
    expect(workbook.formulaAt('Jobs', 'C1')).toBe(FORMULA.replace('Hoses!A1:N5', 'Hoses!A1:N56'));
    expect((await workbookCatalogue(workbook))!.shown).toBe(loaded.catalogue!.handle);
  });

  test('a second replacing on the same day makes a second copy; only sheets that the formula names are touched', async () => {
    const workbook = standingWorkbook();
    for (const table of [longer, treeTables.hoses]) {
      const { plan } = await loadThrough(workbook, { 'hoses.csv': csvOf(table) });
      await writeParts(workbook, await plan());
    }
    expect(await workbook.sheets()).toEqual(expect.arrayContaining(['Hoses 2026-11-25', 'Hoses 2026-11-25 (2)']));
    const touched = new Set(workbook.written.flat().flatMap(change => ('at' in change ? [change.at.sheet] : [])));
    expect([...touched].sort()).toEqual(['Hoses', 'Hoses 2026-11-25', 'Hoses 2026-11-25 (2)', 'Jobs']);
  });

  test('keeps columns where their headings stand, whatever their order in the file', async () => {
    const workbook = standingWorkbook();
    const turned = treeTables.hoses.map(row => [...row].reverse());
    const { plan, loaded } = await loadThrough(workbook, { 'hoses.csv': csvOf(turned) });
    const planned = await plan();
    expect(loaded.changes).toEqual([]);
    expect(planned.tables[0]!.changes).toEqual([]);
    expect(planned.copies).toEqual([]);
    expect(planned.message).toContain('Hoses stays as it is.');
  });

  test('blanks rows that are no longer in the file, and old formulas become values in the copy', async () => {
    const rows = treeTables.hoses.map(row => [...row]) as (string | number | null | { formula: string })[][];
    rows[1]![12] = { formula: '=4*2' };
    const workbook = standingWorkbook({ Hoses: rows });
    const { plan } = await loadThrough(workbook, { 'hoses.csv': csvOf(treeTables.hoses.slice(0, 3)) });
    const planned = await plan();
    expect(planned.message.join(' ')).toMatch(/1 formula is replaced by values/);
    await writeParts(workbook, planned);
    expect(workbook.shown('Hoses')).toHaveLength(3);
    expect(workbook.formulaAt('Hoses 2026-11-25', 'M2')).toBe('');
    expect(workbook.shown('Hoses 2026-11-25')![1]![12]).toBe('shown by =4*2');
  });

  test('columns that people keep beside the data stay with their rows', async () => {
    const rows = treeTables.hoses.map((row, r) => [...row, r === 0 ? 'Shelf' : r === 2 ? '' : `shelf ${r}`]);
    const workbook = standingWorkbook({ Hoses: rows as never });
    workbook.cells.get('Jobs')!.get('0,2')!.formula = FORMULA.replace('A1:N5', 'A1:O5');
    // The second and fourth rows change places, the third comes no more.
    const [head, first, second, , fourth] = treeTables.hoses;
    const { plan } = await loadThrough(workbook, { 'hoses.csv': csvOf([head!, first!, fourth!, second!]) });
    const planned = await plan();
    expect(planned.message).toContain(
      'Hoses: your own columns stay with their rows: Shelf; filled cells of rows that are no longer in the file: 1.',
    );
    await writeParts(workbook, planned);
    expect(workbook.shown('Hoses')!.map(row => [row[0], row[14]])).toEqual([
      ['Hose', 'Shelf'],
      ['Alder DN 12', 'shelf 1'],
      ['Willow DN 25', 'shelf 4'],
      ['Alder DN 25', ''],
    ]);
  });

  test('says what stands outside the old range before it writes over it', async () => {
    const rows = [...(treeTables.hoses as never[]), ['appended below the range']] as never;
    const { plan } = await loadThrough(standingWorkbook({ Hoses: rows }), { 'hoses.csv': csvOf(longer) });
    expect((await plan()).overwrites).toEqual(['Hoses!A6 outside the old table are overwritten.']);
  });

  test('the range ends above what else stands on the sheet', async () => {
    const rows = [...(treeTables.hoses as never[]), [], [], [], ['totals']] as never;
    const { plan } = await loadThrough(standingWorkbook({ Hoses: rows }), { 'hoses.csv': csvOf(longer) });
    const planned = await plan();
    expect(planned.overwrites).toEqual([]);
    expect(planned.tables[0]!.reads.address).toBe('A1:N8');
  });

  test('refuses to grow into another table or over the Catalogue cell, and to follow a calculated formula', async () => {
    const both = [...(treeTables.hoses as never[]), ...(treeTables.fittings as never[])] as never;
    const shared = standingWorkbook({ Hoses: both });
    shared.cells
      .get('Jobs')!
      .set('0,2', { value: '', formula: '=HOSE.CATALOGUE(Hoses!A1:N5,Hoses!A6:M13,Crimps!A1:J6)', format: '' });
    await expect((await loadThrough(shared, { 'hoses.csv': csvOf(longer) })).plan()).rejects.toThrow(
      'Hoses would grow into Fittings on sheet Hoses',
    );
    const covered = standingWorkbook();
    covered.cells.get('Jobs')!.delete('0,2');
    covered.cells.get('Hoses')!.set('5,3', { value: '', formula: FORMULA, format: '' });
    await expect((await loadThrough(covered, { 'hoses.csv': csvOf(longer) })).plan()).rejects.toThrow(
      'Hoses would grow over the Catalogue cell Hoses!D6',
    );
    const calculated = standingWorkbook();
    calculated.cells
      .get('Jobs')!
      .set('0,2', { value: '', formula: '=HOSE.CATALOGUE(FILTER(Hoses!A1:N5,1),Fittings!A1:M8,Crimps!A1:J6)', format: '' });
    await expect((await loadThrough(calculated, threeFiles)).plan()).rejects.toThrow('Enter plain ranges there');
  });

  test('a name Catalogue that stands for something else is moved only when that was said', async () => {
    const workbook = new LiveWorkbook({ Sheet1: [['x']] }, { Catalogue: { sheet: 'Sheet1', address: 'A1' } });
    const planned = await (await loadThrough(workbook, threeFiles)).plan();
    expect(planned.overwrites).toEqual(['The name Catalogue stands for Sheet1!A1 now and is moved to Catalogue!A3.']);
  });
});

describe('a writing that does not come to its end', () => {
  const changed = {
    'hoses.csv': csvOf(withCell('hoses', 1, 'Price per length (per m)', 9).hoses!),
    'fittings.csv': csvOf(withCell('fittings', 1, 'Price', 5).fittings!),
  };
  /** So small that every table goes in several pieces. */
  const SMALL = 400;

  test.each([0, 1, 2, 3, 5, 8, 11])('leaves everything as it was where the host fails at piece %i', async fails => {
    const workbook = standingWorkbook();
    const before = workbook.snapshot();
    const { plan } = await loadThrough(workbook, changed);
    const planned = await plan();
    let turn = 0;
    workbook.beforeWrite = () => {
      if (turn++ === fails) throw new Error('The connection is lost');
    };
    await expect(writeParts(workbook, planned, {}, SMALL)).rejects.toThrow(
      'The connection is lost. The workbook is as it was before.',
    );
    expect(turn).toBeGreaterThan(fails);
    expect(workbook.snapshot()).toEqual(before);
  });

  test('puts a formula back that fills several cells, and not what it had filled as values', async () => {
    const hoses = treeTables.hoses.map(row => [...row]) as (string | number | null | { formula: string })[][];
    const workbook = standingWorkbook({
      Hoses: hoses.map((row, r) => (r === 1 ? [...row.slice(0, 12), { formula: '=Masses' }, row[13]!] : row)),
    });
    workbook.spills.push({ sheet: 'Hoses', address: 'M2:M5' });
    const planned = await (
      await loadThrough(workbook, { 'hoses.csv': csvOf(withCell('hoses', 1, 'Family', 'Oak').hoses!) })
    ).plan();
    expect(planned.message.join(' ')).toContain('what the formula in M2 fills, M2:M5, becomes values');
    // The second piece that goes to Hoses fails.
    let pieces = 0;
    workbook.beforeWrite = changes => {
      if (changes.some(change => 'at' in change && change.at.sheet === 'Hoses') && ++pieces === 2)
        throw new Error('The connection is lost');
    };
    await expect(writeParts(workbook, planned, {}, SMALL)).rejects.toThrow('The workbook is as it was before.');
    expect(['M2', 'M3', 'M5'].map(cell => workbook.formulaAt('Hoses', cell))).toEqual(['=Masses', '', '']);
    const [cells] = await workbook.read([{ sheet: 'Hoses', address: 'M3:M5' }]);
    expect(cells!.values.flat()).toEqual(['', '', '']);
  });

  test('leaves everything as it was where the user stops it', async () => {
    const workbook = standingWorkbook();
    const before = workbook.snapshot();
    const stop = new AbortController();
    const planned = await (await loadThrough(workbook, changed)).plan();
    const shares: number[] = [];
    const onProgress = (share?: number) => {
      shares.push(share!);
      if (share! > 0.6) stop.abort();
    };
    await expect(writeParts(workbook, planned, { onProgress, signal: stop.signal }, SMALL)).rejects.toThrow(
      'Stopped. The workbook is as it was before.',
    );
    expect(workbook.snapshot()).toEqual(before);
    expect(shares[0]).toBe(0);
  });

  test('says exactly what stands where the host fails for good, and where the old values are', async () => {
    const workbook = standingWorkbook();
    const planned = await (await loadThrough(workbook, changed)).plan();
    // The first piece of Fittings holds its headings only, which stay as they were.
    let begun = false;
    workbook.beforeWrite = changes => {
      if (begun) throw new Error('Gone');
      begun = changes.some(change => 'at' in change && change.at.sheet === 'Fittings');
    };
    await expect(writeParts(workbook, planned, {}, SMALL)).rejects.toThrow(
      'Gone. Hoses could not be put back and may hold old and new rows. The old values are on Hoses 2026-11-25. Do not work with the catalogue until this is put right (Undo may do it).',
    );
  });

  test('written in pieces or whole, the workbook is the same', async () => {
    const [whole, pieces] = [standingWorkbook(), standingWorkbook()];
    for (const [workbook, most] of [
      [whole, undefined],
      [pieces, SMALL],
    ] as const) {
      await writeParts(workbook, await (await loadThrough(workbook, changed)).plan(), {}, most);
    }
    expect(whole.written).toHaveLength(1);
    expect(pieces.written.length).toBeGreaterThan(10);
    expect(pieces.snapshot()).toEqual(whole.snapshot());
  });
});
