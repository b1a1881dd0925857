/** @jest-environment ./tests/quickJsdom.mjs */
import { TextDecoder } from 'node:util';
import { act, configure, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import type { RawTable } from '../../../src/core/catalogue/rawTable';
import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { treeTables, withCell, withRows } from '../../core/catalogue/treeCatalogue';
import { LiveWorkbook } from '../../sheets/parts/liveWorkbook';
import { csvOf, standingWorkbook } from '../../sheets/parts/standingWorkbook';

// Browsers have it; the page of these tests has not.
Object.assign(globalThis, { TextDecoder });
configure({ asyncUtilTimeout: 10_000 });
beforeEach(() => localStorage.clear());

function open(workbook: LiveWorkbook, place = 'parts/search') {
  render(<TaskPane workbook={workbook} functions={[]} wanted={{ place }} />);
  return workbook;
}

const LOAD = { place: 'parts/load' };
/** Opens the view that loads, and waits until it has read the workbook. */
async function openLoad(workbook: LiveWorkbook) {
  open(workbook, 'parts/load');
  await screen.findByLabelText('Files of parts data');
  return workbook;
}

/** A file as a browser gives it; jsdom's own cannot be read. */
function file(name: string, bytes: Uint8Array): File {
  const made = new File([bytes as BlobPart], name);
  Object.defineProperty(made, 'arrayBuffer', { value: async () => bytes.slice().buffer });
  return made;
}

const choose = (...files: File[]) => fireEvent.change(screen.getByLabelText('Files of parts data'), { target: { files } });
const threeFiles = () => (['hoses', 'fittings', 'crimps'] as const).map(table => file(`${table}.csv`, csvOf(treeTables[table])));

describe('what stands', () => {
  test('handle, counts and rows left out are shown; a problem leads to its cell', async () => {
    const rows = withCell('hoses', 3, 'Bore (mm)', 'wide').hoses!;
    const workbook = open(standingWorkbook({ Hoses: rows as never }));
    const card = await screen.findByRole('group', { name: 'Catalogue of this workbook' });
    expect(within(card).getByText(/^CAT-[0-9a-f]{8} \(mm, bar/)).toBeTruthy();
    expect(within(card).getByText(/Hoses 3 · Fittings 7 · Crimps 5 .* 1 row left out/)).toBeTruthy();
    fireEvent.click(screen.getByText('sheet Hoses, row 4, column E', { selector: 'button' }));
    await waitFor(async () => expect(await workbook.selection()).toMatchObject({ sheet: 'Hoses', row: 3, column: 4 }));
  });

  test('an empty workbook is told so, with the way to load', async () => {
    open(new LiveWorkbook({ Sheet1: [] }));
    expect(await screen.findByText(/no parts data yet/)).toBeTruthy();
    fireEvent.click(screen.getByText('Load parts data', { selector: 'button' }));
    expect(await screen.findByText('Choose files …', { selector: 'button' })).toBeTruthy();
  });

  test('a catalogue cell whose tables are none says why', async () => {
    open(
      standingWorkbook({
        Hoses: [
          ['Hose', 'Family'],
          ['x', 'y'],
        ],
      }),
    );
    // The strip below may say it as well.
    const own = within(screen.getByRole('tabpanel', { name: 'Search' }));
    expect(await own.findByText(/Hoses has no heading "Bore", "Working pressure"/)).toBeTruthy();
  });
});

describe('searching', () => {
  test('where nothing is found, the way back to all parts is offered', async () => {
    open(standingWorkbook());
    fireEvent.change(await screen.findByRole('searchbox'), { target: { value: 'spruce' } });
    expect(await screen.findByText(/No part has all these words/)).toBeTruthy();
    fireEvent.click(screen.getByText('Show all parts', { selector: 'button' }));
    expect(await screen.findByText('11 of 11 parts')).toBeTruthy();
  });

  test('finds as somebody types, shows the card, and inserts name and look-up; filled cells are asked about', async () => {
    const user = userEvent.setup();
    const workbook = open(
      standingWorkbook({
        Prices: [
          ['Hose', 'Bore'],
          ['', 'x'],
        ],
      }),
    );
    await user.type(await screen.findByRole('searchbox'), 'birch 25');
    await screen.findByText('3 of 11 parts');
    fireEvent.click(screen.getByText('Birch DN 25', { selector: 'button' }));
    const card = screen.getByRole('group', { name: /Hose Birch DN 25/ });
    expect(within(card).getByText('380 bar')).toBeTruthy();
    expect(within(card).getByText(/Not stated: Outside diameter/)).toBeTruthy();
    await act(() => workbook.select({ sheet: 'Prices', address: 'A2' }));
    fireEvent.click(within(card).getByText('Insert name', { selector: 'button' }));
    await screen.findByText('Wrote Birch DN 25 into Prices!A2.');
    fireEvent.change(within(card).getByLabelText('Look-up beside it'), { target: { value: 'Bend radius' } });
    fireEvent.click(within(card).getByText('Insert look-up', { selector: 'button' }));
    await screen.findByText(/B2 holds "x"/);
    expect(workbook.formulaAt('Prices', 'B2')).toBe('');
    fireEvent.click(screen.getByText('Write over', { selector: 'button' }));
    await screen.findByText(/Wrote =HOSE.HOSEDATA\(Catalogue,A2,"bend radius"\) into Prices!B2/);
    expect(workbook.formulaAt('Prices', 'B2')).toBe('=HOSE.HOSEDATA(Catalogue,A2,"bend radius")');
  });

  test('"Leave it" writes nothing, and the keyboard is led to the question and back', async () => {
    const user = userEvent.setup();
    const workbook = open(standingWorkbook());
    fireEvent.click(await screen.findByText('Alder DN 25', { selector: 'button' }));
    await act(() => workbook.select({ sheet: 'Jobs', address: 'A1' }));
    const insert = screen.getByText('Insert name', { selector: 'button' });
    act(() => insert.focus());
    await user.keyboard('{Enter}');
    const leave = await screen.findByText('Leave it', { selector: 'button' });
    const question = document.activeElement!;
    expect(question.getAttribute('role')).toBe('status');
    expect(question.contains(leave)).toBe(true);
    act(() => leave.focus());
    await user.keyboard('{Enter}');
    await waitFor(() => expect(screen.queryByText('Leave it', { selector: 'button' })).toBeNull());
    expect(document.activeElement).toBe(insert);
    expect(workbook.written).toEqual([]);
  });
});

describe('loading', () => {
  test('three .csv files become the catalogue of an empty workbook', async () => {
    const workbook = await openLoad(new LiveWorkbook({ Sheet1: [] }));
    await screen.findByText(/no parts data yet/);
    choose(...threeFiles());
    const write = await screen.findByText('Write the catalogue', { selector: 'button' });
    act(() => write.focus());
    jest.spyOn(document, 'hasFocus').mockReturnValue(true);
    fireEvent.click(write);
    expect(await screen.findByText(/Written/)).toBeTruthy();
    // The button is gone: the keyboard goes on from the view that it stood in.
    await waitFor(() => expect(document.activeElement).toBe(screen.getByRole('group', { name: 'Load parts data' })));
    expect(await screen.findByRole('group', { name: 'Catalogue of this workbook' })).toBeTruthy();
    expect(await workbook.sheets()).toEqual(['Sheet1', 'Hoses', 'Fittings', 'Crimps', 'Catalogue']);
  });

  test('a reading that is stopped says what it waits for, and that nothing was loaded', async () => {
    await openLoad(new LiveWorkbook({ Sheet1: [] }));
    await screen.findByText(/no parts data yet/);
    const slow = new File([], 'parts.xlsx');
    let arrive: (bytes: ArrayBuffer) => void = () => {};
    Object.defineProperty(slow, 'arrayBuffer', { value: () => new Promise<ArrayBuffer>(resolve => (arrive = resolve)) });
    choose(slow);
    const stop = await screen.findByText('Stop reading', { selector: 'button' });
    await screen.findByText('Reading parts.xlsx');
    fireEvent.click(stop);
    expect(await screen.findByText(/^Stopping\. .* parts\.xlsx is dropped as soon as that is done/)).toBeTruthy();
    arrive(csvOf(treeTables.hoses).slice().buffer as ArrayBuffer);
    expect(await screen.findByText('Reading was stopped. Nothing was loaded.')).toBeTruthy();
    expect(screen.queryByText('Stop reading', { selector: 'button' })).toBeNull();
  });

  test('dropped files are read, and the page around does not get them', async () => {
    const outer = jest.fn();
    render(
      <div onDrop={outer}>
        <TaskPane workbook={new LiveWorkbook({ Sheet1: [] })} functions={[]} wanted={LOAD} />
      </div>,
    );
    const zone = (await screen.findByText(/^Drop files here/)).parentElement!;
    fireEvent.drop(zone, { dataTransfer: { files: [file('hoses.csv', csvOf(treeTables.hoses))] } });
    expect(await screen.findByText(/hoses.csv \(4 rows\)/)).toBeTruthy();
    expect(screen.getByText(/no table Fittings, no table Crimps yet/)).toBeTruthy();
    expect(outer).not.toHaveBeenCalled();
  });

  test('headings are mapped by hand, a unit is asked for, and both are remembered', async () => {
    const german = treeTables.hoses.map((row, r) =>
      row.map(cell => (r > 0 ? cell : cell === 'Hose' ? 'Schlauch' : cell === 'Bore (mm)' ? 'Innen' : cell)),
    );
    const files = () => [file('hoses.csv', csvOf(german)), ...threeFiles().slice(1)];
    const first = new LiveWorkbook({ Sheet1: [] });
    const { unmount } = render(<TaskPane workbook={first} functions={[]} wanted={LOAD} />);
    await screen.findByText(/no parts data yet/);
    choose(...files());
    await screen.findByText(/Still missing: Hose, Bore/);
    fireEvent.change(screen.getByLabelText('Schlauch is'), { target: { value: 'hose' } });
    fireEvent.change(screen.getByLabelText('Innen is'), { target: { value: 'bore' } });
    expect(screen.getByText(/heading "Bore" has no unit/)).toBeTruthy();
    fireEvent.change(screen.getByLabelText('Unit of Innen'), { target: { value: 'mm' } });
    expect(await screen.findByText('Write the catalogue', { selector: 'button' })).toBeTruthy();
    unmount();
    await openLoad(new LiveWorkbook({ Sheet1: [] }));
    await screen.findByText(/no parts data yet/);
    choose(...files());
    expect(await screen.findByText('Write the catalogue', { selector: 'button' })).toBeTruthy();
    expect(screen.queryByText(/Still missing/)).toBeNull();
  });

  test('a file in unknown words is never folded away, and its headings open once it is said what it is', async () => {
    await openLoad(new LiveWorkbook({ Sheet1: [] }));
    await screen.findByText(/no parts data yet/);
    const strange = Uint8Array.from(Buffer.from('Preisliste 2026\nTeil;Art;Durchgang\nx;y;12,7\n'));
    choose(...threeFiles().slice(0, 1), file('export 7.csv', strange));
    expect(await screen.findByText('export 7.csv (1 row)')).toBeTruthy();
    expect(screen.queryByText(/other table/)).toBeNull();
    fireEvent.change(screen.getByLabelText('export 7.csv (1 row)'), { target: { value: 'fittings' } });
    expect(await screen.findByText(/Still missing: Fitting, Family/)).toBeTruthy();
    expect(screen.getByLabelText('Teil is')).toBeTruthy();
  });

  test('problems of a file say sheet, row and column', async () => {
    await openLoad(standingWorkbook());
    const bad = withRows('hoses', ['Cedar DN 6', 'Cedar', null, null, 'wide', 200]).hoses!;
    choose(file('hoses.csv', csvOf([['Our hoses'], [], ...bad])));
    const list = await screen.findByText(/hoses.csv, row 8, column E: Bore is "wide"/);
    expect(list).toBeTruthy();
    expect(
      await screen.findByText(/Replace the catalogue \(rows with problems are left out\)/, { selector: 'button' }),
    ).toBeTruthy();
  });

  test('changes are compared field by field before a catalogue is replaced', async () => {
    const workbook = await openLoad(standingWorkbook());
    const dearer = withCell('hoses', 1, 'Price per length (per m)', 9.5).hoses!.slice(0, -1);
    choose(file('hoses.csv', csvOf(dearer)));
    fireEvent.click(await screen.findByText('Hoses: 1 changed, 1 removed', { selector: 'button' }));
    expect(screen.getByText('changed: Alder DN 12: Price per length 8 → 9.5 (+18.8 %)')).toBeTruthy();
    expect(screen.getByText('removed: Willow DN 25')).toBeTruthy();
    fireEvent.click(await screen.findByText('Replace the catalogue', { selector: 'button' }));
    await screen.findByText(/Old values: Hoses \d{4}-\d\d-\d\d/);
    expect(workbook.shown('Hoses')).toHaveLength(4);
  });

  test('a removed part that job lines, crimp rows or machines still name is named with its rows', async () => {
    const line = (hose: string) => [hose, 'Alder cone straight DN 12', 'Alder cone straight DN 12', 900, 1];
    const headings = ['Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Quantity'];
    const workbook = await openLoad(
      standingWorkbook({ Week: [headings, line('Willow DN 25'), line('Alder DN 12'), line('willow dn 25')] }),
    );
    // Alder DN 12 goes as well: crimp rows and a machine's records name it. Birch DN 25 stays.
    choose(file('hoses.csv', csvOf(treeTables.hoses.filter((_, row) => row !== 1 && row !== 4))));
    expect(await screen.findByText('2 removed parts are still used')).toBeTruthy();
    const named = within(screen.getByText('2 removed parts are still used').closest('.fui-MessageBar') as HTMLElement);
    expect(named.getByText('Willow DN 25').closest('li')!.textContent).toBe('Willow DN 25: Week rows 2, 4');
    expect(named.getByText('Alder DN 12').closest('li')!.textContent).toMatch(
      /^Alder DN 12: Week row 3; Crimps \(3 rows\); Machines \(\d rows\)$/,
    );
    fireEvent.click(named.getByText('Willow DN 25'));
    await waitFor(async () => expect(await workbook.selection()).toMatchObject({ sheet: 'Week', row: 1 }));
  });

  test('a removed part that nothing names is no matter', async () => {
    await openLoad(standingWorkbook());
    choose(file('hoses.csv', csvOf(treeTables.hoses.slice(0, -1))));
    await screen.findByText('Hoses: 1 removed', { selector: 'button' });
    await act(() => new Promise(resolve => setTimeout(resolve, 50)));
    expect(screen.queryByText(/still used/)).toBeNull();
  });

  test('proposed headings are confirmed by a person before anything is written', async () => {
    await openLoad(standingWorkbook());
    const [head, ...rows] = treeTables.hoses;
    const foreign = head!.map(cell => ({ 'Bore (mm)': 'ID (mm)', 'Working pressure (bar)': 'WP (psi)' })[String(cell)] ?? cell);
    choose(file('hoses.csv', csvOf([foreign, ...rows])));
    const button = () => screen.findByText('Replace the catalogue', { selector: 'button' });
    expect(await button()).toHaveProperty('disabled', true);
    expect(screen.getByText(/Confirm the proposed headings first \(ID \(mm\), WP \(psi\)\)/)).toBeTruthy();
    expect(screen.getAllByText('Proposed: confirm or change it')).toHaveLength(2);
    fireEvent.click(screen.getByRole('button', { name: 'Confirm 2 proposed headings' }));
    await waitFor(async () => expect(await button()).toHaveProperty('disabled', false));
    expect(screen.queryByText(/Confirm the proposed/)).toBeNull();
  });

  test('what looks wrong is said before it is written, one cause once', async () => {
    await openLoad(standingWorkbook());
    choose(
      file(
        'crimps.csv',
        csvOf([...treeTables.crimps, ...['a', 'b', 'c'].map(end => ['Yew DN 9', `Alder ${end}*`, null, 'D23', 310, 23.4, 0.15])]),
      ),
    );
    expect(
      await screen.findByText(/crimps.csv, rows 7–9, column A \(3 rows\): Hose "Yew DN 9" is not in the table Hoses/),
    ).toBeTruthy();
  });

  test('what would be written over has to be agreed to', async () => {
    const rows = [...(treeTables.hoses as never[]), ['mine']] as never;
    const workbook = await openLoad(standingWorkbook({ Hoses: rows }));
    choose(file('hoses.csv', csvOf(withRows('hoses', ['Cedar DN 6', 'Cedar', null, null, 6.3, 200]).hoses!)));
    const button = await screen.findByText('Replace the catalogue', { selector: 'button' });
    expect(button).toHaveProperty('disabled', true);
    fireEvent.click(screen.getByRole('checkbox', { name: /Hoses!A6 outside the old table are overwritten/ }));
    fireEvent.click(button);
    await screen.findByText(/Old values: Hoses/);
    expect(workbook.shown('Hoses')!.at(-1)![0]).toBe('Cedar DN 6');
  });

  test('a workbook that changed since the comparison is not written to', async () => {
    const workbook = await openLoad(standingWorkbook());
    choose(file('hoses.csv', csvOf(treeTables.hoses.slice(0, 3))));
    const button = await screen.findByText('Replace the catalogue', { selector: 'button' });
    workbook.cells.get('Hoses')!.set('1,4', { value: 12.9, formula: '', format: 'General' });
    fireEvent.click(button);
    expect(await screen.findByText(/have changed since they were compared/)).toBeTruthy();
    expect(workbook.written).toEqual([]);
  });

  test('a refusal of the host is said with what stands', async () => {
    const workbook = await openLoad(standingWorkbook());
    choose(file('hoses.csv', csvOf(treeTables.hoses.slice(0, 3))));
    workbook.beforeWrite = () => {
      throw new Error('The sheet is protected');
    };
    fireEvent.click(await screen.findByText('Replace the catalogue', { selector: 'button' }));
    expect(await screen.findByText(/The sheet is protected. The workbook is as it was before./)).toBeTruthy();
  });

  test('a sheet of this workbook is read where it stands', async () => {
    const { hoses, fittings, crimps } = treeTables;
    const workbook = await openLoad(
      new LiveWorkbook({
        'Our hoses': [['Parts of the workshop'], ...hoses] as never,
        Ends: fittings as never,
        Data: crimps as never,
      }),
    );
    await screen.findByText(/no parts data yet/);
    for (const sheet of ['Our hoses', 'Ends', 'Data']) {
      fireEvent.change(await screen.findByLabelText('Or a table of this workbook'), { target: { value: sheet } });
      fireEvent.click(screen.getByText('Add', { selector: 'button' }));
      await screen.findByText(new RegExp(`sheet ${sheet} \\(`));
    }
    fireEvent.click(await screen.findByText('Write the catalogue', { selector: 'button' }));
    await screen.findByText(/Written/);
    expect(workbook.formulaAt('Catalogue', 'A3')).toBe("=HOSE.CATALOGUE('Our hoses'!A2:N56,Ends!A1:M58,Data!A1:J56)");
    expect(await workbook.sheets()).toEqual(['Our hoses', 'Ends', 'Data', 'Catalogue']);
  });

  test('two tables of one sheet are both taken, and the same range again replaces itself', async () => {
    const { hoses, fittings, crimps } = treeTables;
    const workbook = await openLoad(new LiveWorkbook({ Prices: [...hoses, [], ...fittings] as never, Data: crimps as never }));
    await screen.findByText(/no parts data yet/);
    const last = (table: RawTable, above: number) => `N${above + table.length}`;
    const ranges = [`A1:${last(hoses, 0)}`, `A${hoses.length + 2}:${last(fittings, hoses.length + 1)}`];
    for (const address of [...ranges, ranges[0]!]) {
      await act(async () => workbook.select({ sheet: 'Prices', address }));
      fireEvent.click(screen.getByText('Add', { selector: 'button' }));
      await screen.findAllByText(/sheet Prices.* \(/);
    }
    fireEvent.change(await screen.findByLabelText('Or a table of this workbook'), { target: { value: 'Data' } });
    fireEvent.click(screen.getByText('Add', { selector: 'button' }));
    await screen.findByText(/sheet Data \(/);
    expect(screen.getAllByText(/sheet Prices, A\d+:N\d+ \(/)).toHaveLength(2);
    fireEvent.click(await screen.findByText('Write the catalogue', { selector: 'button' }));
    await screen.findByText(/Written/);
    const { handle } = (await workbookCatalogue(workbook))!.catalogue!;
    expect(handle).toContain('4 hoses');
    expect(workbook.formulaAt('Catalogue', 'A3')).toMatch(/^=HOSE\.CATALOGUE\(Prices!A1:N\d,Prices!A7:N\d\d,Data!A1:J56\)$/);
  });
});
