/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { configure, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { useState } from 'react';
import type { FileSheet } from '../../../src/core/catalogue/partsFile';
import type { RawTables } from '../../../src/core/catalogue/readCatalogue';
import { catalogueTables, TABLE_NAMES } from '../../../src/core/catalogue/tables/catalogueTables';
import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import type { HostServices, OfficeLook } from '../../../src/taskpane/controls/viewProps';
import { LoadView } from '../../../src/taskpane/parts/LoadView';
import { OfficeBar } from '../../../src/taskpane/parts/OfficeBar';
import type { OfficeFile } from '../../../src/workbook/officeFile';
import { treeTables, withCell } from '../../core/catalogue/treeCatalogue';
import { LiveWorkbook } from '../../sheets/parts/liveWorkbook';
import { FORMULA, standingWorkbook } from '../../sheets/parts/standingWorkbook';
import { viewProps } from '../viewProps';

configure({ asyncUtilTimeout: 10_000 });
beforeEach(() => localStorage.clear());

/** The host: what it has beside the add-in, what is in that file, and how often the file was read. */
function officeOf(file: OfficeFile | RawTables) {
  const read = jest.fn(async () => {
    const sheets = TABLE_NAMES.flatMap((name): [string, FileSheet][] => {
      const table = (file as RawTables)[name];
      return table ? [[catalogueTables[name].sheet, { table }]] : [];
    });
    return new Map(sheets);
  });
  const there = { status: 'there', name: 'catalogue/current.xlsx', bytes: new Uint8Array(), tag: '"1"' } as const;
  const answer: OfficeFile = 'status' in file ? file : there;
  const services: HostServices = {
    ...viewProps(standingWorkbook()).services,
    officeFile: async () => answer,
    readPartsFile: read,
  };
  return { services, read };
}

/** The bar of the pane, and Load behind it, as the pane shows one or the other. */
function Pane({ workbook, services }: { readonly workbook: LiveWorkbook; readonly services: HostServices }) {
  const [officeLook, setLook] = useState<OfficeLook>();
  return (
    <FluentProvider theme={webLightTheme}>
      <OfficeBar workbook={workbook} services={services} isHidden={officeLook !== undefined} onLook={() => setLook({})} />
      {officeLook && <LoadView {...viewProps(workbook)} services={services} officeLook={officeLook} />}
    </FluentProvider>
  );
}

const openBar = (workbook: LiveWorkbook, services: HostServices) => render(<Pane workbook={workbook} services={services} />);

function openLoad(workbook: LiveWorkbook, services: HostServices) {
  return render(
    <FluentProvider theme={webLightTheme}>
      <LoadView {...viewProps(workbook)} services={services} />
    </FluentProvider>,
  );
}

function ownWorkbook(): LiveWorkbook {
  const workbook = standingWorkbook();
  workbook.cells.get('Jobs')!.get('0,2')!.formula = FORMULA.replace('Machines!A1:J6', 'Machines!A1:K6');
  return workbook;
}
/** A workbook whose catalogue came from the office. */
async function officesWorkbook(): Promise<LiveWorkbook> {
  const workbook = ownWorkbook();
  const { handle } = (await workbookCatalogue(workbook))!.catalogue!;
  workbook.remembered.set('office', JSON.stringify({ isDeclined: false, taken: handle, handle }));
  return workbook;
}
const dearer = withCell('hoses', 1, 'Price per length (per m)', 9);
const press = (name: string) => fireEvent.click(screen.getByText(name, { selector: 'button' }));

describe('the bar of the pane', () => {
  test('a newer catalogue is taken with one press, and the old values are kept', async () => {
    const workbook = await officesWorkbook();
    openBar(workbook, officeOf(dearer).services);
    await screen.findByText('The office has a newer catalogue:');
    await screen.findByText('Take it', { selector: 'button' });
    expect(screen.getByText(/^1 price\. Old values go to Hoses \d{4}-\d\d-\d\d\. Crimp data: check them against/)).toBeTruthy();
    expect(workbook.written).toEqual([]);
    press('Take it');
    await screen.findByText(/^CAT-.* Old values: Hoses /);
    expect(workbook.shown('Hoses')![1]![12]).toBe(9);
    const copy = (await workbook.sheets()).find(sheet => /^Hoses \d/.test(sheet))!;
    expect(workbook.shown(copy)![1]![12]).toBe(8);
    const { handle } = (await workbookCatalogue(workbook))!.catalogue!;
    await waitFor(() =>
      expect(JSON.parse(workbook.remembered.get('office')!)).toEqual({ isDeclined: false, taken: handle, handle }),
    );
    press('Close');
    await waitFor(() => expect(screen.queryByText(/office/)).toBeNull());
  });

  test('a workbook with rows of its own is only shown what differs; Load has rows, cautions and the button', async () => {
    const workbook = ownWorkbook();
    const { machines, ...others } = treeTables;
    const office = { ...others, ...dearer, fittings: dearer.fittings!.filter(row => row[0] !== 'Birch ferrule DN 25') };
    openBar(workbook, officeOf({ ...office, machines }).services);
    await screen.findByText('The office’s catalogue differs:');
    expect(screen.getByText('1 price, 1 coupling removed.', { exact: false })).toBeTruthy();
    expect(screen.queryByText('Take it')).toBeNull();
    press('Look at the changes');
    const changes = within(await screen.findByRole('region', { name: 'What changes' }));
    // Seen and read out first, above it what is loaded stays within reach.
    expect(document.activeElement).toBe(screen.getByRole('group', { name: 'What loading changes' }));
    fireEvent.click(changes.getByText('Hoses: 1 changed'));
    expect(await changes.findByText('changed: Alder DN 12: Price per length 8 → 9 (+12.5 %)')).toBeTruthy();
    expect(await screen.findByText('1 removed part is still used')).toBeTruthy();
    expect(await screen.findByText(/^Crimp data decide what holds under pressure/)).toBeTruthy();
    expect(workbook.written).toEqual([]);
    fireEvent.click(await screen.findByText(/^Replace the catalogue/, { selector: 'button' }));
    await screen.findByText(/^CAT-.* Old values: /);
    expect(await screen.findByText('Up to date with the office’s catalogue.')).toBeTruthy();
    expect(workbook.remembered.get('office')).toContain('"isDeclined":false');
  });

  test('"Later" puts it away until the pane is opened again', async () => {
    const workbook = ownWorkbook();
    const { services } = officeOf(dearer);
    const { unmount } = openBar(workbook, services);
    await screen.findByText('The office’s catalogue differs:');
    press('Later');
    expect(screen.queryByText('The office’s catalogue differs:')).toBeNull();
    unmount();
    openBar(workbook, services);
    expect(await screen.findByText('The office’s catalogue differs:')).toBeTruthy();
  });

  test('"Not for this workbook" is remembered with it, and Load has the way back', async () => {
    const workbook = ownWorkbook();
    const { services } = officeOf(dearer);
    const { unmount } = openBar(workbook, services);
    await screen.findByText('The office’s catalogue differs:');
    press('Not for this workbook');
    await waitFor(() => expect(screen.queryByText('The office’s catalogue differs:')).toBeNull());
    expect(workbook.remembered.get('office')).toContain('"isDeclined":true');
    unmount();
    openLoad(workbook, services);
    await screen.findByText('The office’s catalogue is not for this workbook.');
    press('Compare it again');
    expect(await screen.findByText('The office’s catalogue differs:')).toBeTruthy();
  });

  test('a workbook without parts data takes the office’s', async () => {
    const workbook = new LiveWorkbook({ Sheet1: [] });
    openBar(workbook, officeOf(treeTables).services);
    await screen.findByText('No parts data yet. The office’s catalogue:');
    expect(screen.getByText(/^mm, bar; 4 hoses, 7 fittings, 5 crimps\./)).toBeTruthy();
    press('Look at it');
    fireEvent.click(await screen.findByText('Write the catalogue', { selector: 'button' }));
    await screen.findByText(/^Written/);
    expect(await workbook.sheets()).toEqual(expect.arrayContaining(['Hoses', 'Fittings', 'Crimps', 'Catalogue']));
  });

  test('a file that is known to add nothing is not read again', async () => {
    const { services, read } = officeOf(treeTables);
    const { unmount } = openLoad(ownWorkbook(), services);
    await screen.findByText('Up to date with the office’s catalogue.');
    expect(read).toHaveBeenCalledTimes(1);
    unmount();
    const again = officeOf(treeTables);
    openLoad(ownWorkbook(), again.services);
    await screen.findByText('Up to date with the office’s catalogue.');
    expect(again.read).not.toHaveBeenCalled();
  });
});

describe('the line in Load', () => {
  test.each<[string, OfficeFile, string]>([
    [
      'offline',
      { status: 'unreachable', reason: 'no connection' },
      'The office’s catalogue cannot be reached (no connection). Nothing changes: this workbook uses its own parts data.',
    ],
    [
      'a web page',
      { status: 'unusable', reason: 'catalogue/current.xlsx is a web page, not a workbook' },
      'The office’s catalogue is not used: catalogue/current.xlsx is a web page, not a workbook.',
    ],
  ])('%s is said there and nowhere else, and the workbook works on', async (_, file, sentence) => {
    const { services } = officeOf(file);
    const { unmount } = openBar(ownWorkbook(), services);
    await waitFor(() => expect(screen.queryByText(/office/)).toBeNull());
    unmount();
    openLoad(ownWorkbook(), services);
    expect(await screen.findByText(sentence)).toBeTruthy();
    expect(await screen.findByText(/^CAT-/)).toBeTruthy();
  });

  test('a file that cannot be read is named', async () => {
    const { services } = officeOf({});
    openLoad(ownWorkbook(), services);
    expect(await screen.findByText(/^The office’s catalogue is not used: catalogue\/current\.xlsx holds no table/)).toBeTruthy();
  });

  test('an office that keeps none is not mentioned', async () => {
    openLoad(ownWorkbook(), officeOf({ status: 'none' }).services);
    await screen.findByText(/^CAT-/);
    expect(screen.queryByText(/office/)).toBeNull();
  });
});
