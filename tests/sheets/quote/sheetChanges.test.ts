import { blockOf, overlap, type Block } from '../../../src/workbook/a1';
import type { Change } from '../../../src/workbook/workbook';
import { FRESH_QUOTE } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { RATING_CAUTION } from '../../../src/sheets/print/cautions';
import { writePurchase } from '../../../src/sheets/purchase/writePurchase';
import { writeQuote } from '../../../src/sheets/quote/writeQuote';
import { writeWhatIf } from '../../../src/sheets/quote/writeWhatIf';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { asStanding, demoQuotes } from './demoQuotes';

/* What Excel asks of a batch that the try-out sheet would let pass. */

/** Characters of a formula at the most. Source: Microsoft, "Excel specifications and limits". */
const LONGEST_FORMULA = 8192;

async function batch(write: (workbook: ReturnType<typeof fakeWorkbook>['workbook']) => Promise<unknown>, sheets = demoQuotes()) {
  const fake = fakeWorkbook(sheets, { sheet: 'Jobs', address: 'A2' });
  await write(fake.workbook);
  expect(fake.written).toHaveLength(1);
  return { changes: fake.written[0]!, standing: Object.keys(sheets) };
}

const { settings } = readQuoteSettings({ ...FRESH_QUOTE, margin: '40 %', callOut: '35' }, [], '0.00');
const asQuote = () => batch(workbook => writeQuote(workbook, settings!, undefined, '2026-10-05'));

async function withQuote(): Promise<Record<string, FakeCell[][]>> {
  return { ...demoQuotes(), ...asStanding((await asQuote()).changes) };
}

const asWhatIf = async () =>
  batch(
    workbook =>
      writeWhatIf(workbook, { families: [{ family: 'Alder', rise: 0.1 }], fittings: 0, guards: 0 }, ['Quote'], '2026-10-05'),
    await withQuote(),
  );
const asPurchase = () => batch(workbook => writePurchase(workbook, undefined, '2026-10-05'));

const formulasOf = (changes: readonly Change[]) =>
  changes.flatMap(change => (change.kind === 'formulas' ? change.formulas.flat().filter(formula => formula !== '') : []));
const sheetsIn = (formula: string) =>
  [...formula.replace(/"[^"]*"/g, '""').matchAll(/(?:'((?:[^']|'')+)'|\b([\p{L}_][\p{L}\p{N}_.]*))!/gu)].map(
    ([, quoted, plain]) => quoted?.replace(/''/g, "'") ?? plain!,
  );

/** Columns to the right that a formula fills besides its own: UNITCOST gives four. */
function spills(changes: readonly Change[]): (Block & { sheet: string })[] {
  return changes.flatMap(change => {
    if (change.kind !== 'formulas') return [];
    const { row, column } = blockOf(change.at.address)!;
    return change.formulas.flatMap((line, r) =>
      line.flatMap((formula, c) =>
        /^=HOSE\.UNITCOST\(/.test(formula)
          ? [{ sheet: change.at.sheet, row: row + r, column: column + c + 1, rows: 1, columns: 3 }]
          : [],
      ),
    );
  });
}

describe.each([
  ['a quote', asQuote],
  ['a purchase list', asPurchase],
  ['a what-if', asWhatIf],
])('%s', (_, write) => {
  test('has blocks of the shape of their address, and formulas that are whole', async () => {
    const { changes } = await write();
    for (const change of changes) {
      if (change.kind !== 'values' && change.kind !== 'formulas') continue;
      const { rows, columns } = blockOf(change.at.address)!;
      const cells = change.kind === 'values' ? change.values : change.formulas;
      expect([cells.length, ...new Set(cells.map(row => row.length))]).toEqual([rows, columns]);
    }
    const formulas = formulasOf(changes);
    expect(formulas.length).toBeGreaterThan(10);
    for (const formula of formulas) {
      const bare = formula.replace(/"[^"]*"/g, '');
      expect(formula).toMatch(/^=/);
      expect(formula.length).toBeLessThanOrEqual(LONGEST_FORMULA);
      expect(bare).not.toMatch(/undefined|NaN|"/);
      expect([...bare].filter(sign => sign === '(').length).toBe([...bare].filter(sign => sign === ')').length);
    }
  });

  test('writes into its own new sheets only, and names no sheet before it is there', async () => {
    const { changes, standing } = await write();
    const own = new Set<string>();
    for (const change of changes) {
      if (change.kind === 'addSheet') {
        expect(standing).not.toContain(change.sheet);
        own.add(change.sheet);
        continue;
      }
      expect([...own]).toContain('at' in change ? change.at.sheet : 'sheet' in change ? change.sheet : '');
      for (const formula of formulasOf([change])) {
        for (const sheet of sheetsIn(formula)) expect([...standing, ...own]).toContain(sheet);
      }
    }
  });

  test('leaves the cells free that its formulas fill', async () => {
    const { changes } = await write();
    for (const spill of spills(changes)) {
      for (const change of changes) {
        if (change.kind !== 'values' && change.kind !== 'formulas') continue;
        if (change.at.sheet === spill.sheet) expect(overlap(blockOf(change.at.address)!, spill)).toBeUndefined();
      }
    }
  });
});

test('the checks see the spills of a quote and of a what-if', async () => {
  expect(spills((await asQuote()).changes)).toHaveLength(2);
  expect(spills((await asWhatIf()).changes)).toHaveLength(2);
});

test('every new sheet says how it is printed: lying, on one page’s width, with its headings on every page where it is one table', async () => {
  const { changes } = await asWhatIf();
  const added = changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []));
  const pages = changes.flatMap(change => (change.kind === 'page' ? [change] : []));
  expect(pages.map(({ sheet }) => sheet).sort()).toEqual([...added].sort());
  for (const { sheet, page } of pages) {
    expect(page).toMatchObject({ orientation: 'landscape', fitWidth: true, ...(sheet !== 'What-if' && { titleRows: '1:1' }) });
  }
});

test('what is printed of a quote ends with the last line of its caution, and with the column Note', async () => {
  const { changes } = await asQuote();
  const { page } = changes.find(change => change.kind === 'page' && change.sheet === 'Quote') as Extract<
    Change,
    { kind: 'page' }
  >;
  const rows = asStanding(changes).Quote!;
  expect(RATING_CAUTION.endsWith(String(rows.at(-1)![0]))).toBe(true);
  expect(String(rows.at(-1)![0]).length).toBeGreaterThan(5);
  const note = rows.find(row => row.includes('Price each'))!.indexOf('Note');
  expect(blockOf(page.printArea!)).toEqual({ row: 0, column: 0, rows: rows.length, columns: note + 1 });
});

test('one selected row is quoted alone, one selected cell stands for the whole table', async () => {
  const linesOf = async (address: string) => {
    const { workbook } = fakeWorkbook(demoQuotes(), { sheet: 'Jobs', address });
    return (await writeQuote(workbook, settings!, undefined, '2026-10-05')).read.lines.map(({ row }) => row);
  };
  expect(await linesOf('A2:E2')).toEqual([2]);
  expect((await linesOf('A2')).length).toBeGreaterThan(1);
});

test('nothing of a quote is cut off: long names of parts get room, headings stand in three lines', async () => {
  const long = 'Alder 37° flare swivel straight DN 12';
  const renamed = Object.entries(demoQuotes()).map(([name, rows]) => {
    return [name, rows.map(row => row.map(cell => (cell === 'Alder cone straight DN 12' ? long : cell)))] as const;
  });
  const sheets = Object.fromEntries(renamed);
  const { changes } = await batch(workbook => writeQuote(workbook, settings!, undefined, '2026-10-05'), sheets);
  const styles = changes.flatMap(change => (change.kind === 'style' ? [change.style] : []));
  expect(styles.filter(({ columnWidth = 0 }) => columnWidth === 197)).toHaveLength(1);
  expect(styles.some(({ bold, rowHeight = 0 }) => bold && rowHeight >= 3 * 15)).toBe(true);
});
