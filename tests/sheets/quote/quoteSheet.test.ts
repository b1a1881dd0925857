import type { CellValue } from '../../../src/workbook/workbook';
import { recalculate } from '../../../src/preview/headless/recalculate';
import { marginsOfWorkbook } from '../../../src/sheets/quote/marginTable';
import { FRESH_QUOTE, type QuoteFieldsText } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { quoteSources, writeQuote } from '../../../src/sheets/quote/writeQuote';
import { RATING_CAUTION } from '../../../src/sheets/print/cautions';
import { builtFunctions } from '../../preview/builtFunctions';
import { bought, sampleLines, costParts, upToCents, type Wanted } from './independentCosts';
import { openSample } from './openSample';

jest.setTimeout(60_000);

type Sample = Awaited<ReturnType<typeof openSample>>;
let book: Sample;
beforeEach(async () => {
  book = await openSample();
  await book.port.select({ sheet: 'Jobs', address: 'A10' });
});
afterEach(() => book.dispose());

const GUARD = 'woven sleeve 30';

/** A column Guard beside the job lines: the first line gets one. */
const addGuard = () => book.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'V9:V10' }, values: [['Guard'], [GUARD]] }]);

async function quote(fields: Partial<QuoteFieldsText>): Promise<string> {
  const { margins, format } = await quoteSources(book.port);
  const { settings, mistakes } = readQuoteSettings({ ...FRESH_QUOTE, ...fields }, margins?.classes ?? [], format);
  expect(mistakes).toEqual({});
  const { sheet } = await writeQuote(book.port, settings!, margins, '2026-10-05');
  await book.calculate();
  return sheet;
}

/** The quote as people see it: rows by heading. */
async function shown(sheet: string) {
  const { values } = await book.content(sheet);
  const head = values.findIndex(row => row.includes('Price each'));
  const at = (row: readonly CellValue[], heading: string) => row[values[head]!.indexOf(heading)]!;
  const rows = values.slice(head + 1).filter(row => typeof row[0] === 'number');
  const label = values[head]!.indexOf('Fitting B');
  const amount = values[head]!.indexOf('Line total');
  const totals = new Map(values.slice(head + 1 + rows.length).map(row => [String(row[label]), row[amount]!]));
  return { values, rows, at, totals, column: (heading: string) => rows.map(row => at(row, heading)) };
}

const withGuard: readonly Wanted[] = sampleLines.map((line, index) => (index === 0 ? { ...line, guard: GUARD } : line));
const costOf = (line: Wanted) => {
  const { hose, fittings, labour, guard } = costParts(line);
  return hose + fittings + labour + guard;
};

describe('a quote with a margin', () => {
  const margin = 0.4;
  const eachOf = (line: Wanted) => upToCents(costOf(line) / (1 - margin));

  it('has the prices, breaks and total that another calculation gives, to the cent', async () => {
    await addGuard();
    const sheet = await quote({ margin: '40 %', breaks: '1, 10, 50', callOut: '35', minimumCharge: '2000' });
    const { column, totals } = await shown(sheet);
    expect(column('Price each')).toEqual(withGuard.map(eachOf));
    for (const quantity of [1, 10, 50]) {
      expect(column(`Each at ${quantity}`)).toEqual(withGuard.map(line => eachOf({ ...line, quantity })));
    }
    const cents = withGuard.map(line => Math.round(eachOf(line) * 100) * line.quantity);
    expect(column('Line total')).toEqual(cents.map(value => value / 100));
    const sum = cents.reduce((total, value) => total + value, 0);
    expect(totals.get('Sum of the lines')).toBe(sum / 100);
    expect(totals.get('Minimum charge supplement (minimum 2000.00)')).toBe((200_000 - sum) / 100);
    expect(totals.get('Call-out')).toBe(35);
    expect(totals.get('Total')).toBe(2035);
  });

  it('the rate “minimum charge” is the least sum of the lines without call-out, never a price each', async () => {
    const rates = await book.content('Rates');
    const row = rates.values.findIndex(cells => cells[0] === 'minimum charge') + 1;
    const sum = sampleLines.reduce((total, line) => total + Math.round(eachOf(line) * 100) * line.quantity, 0) / 100;
    const below = await shown(await quote({ margin: '40 %', callOut: '35' }));
    expect(below.totals.get('Minimum charge supplement (minimum 15.00)')).toBe(0);
    await book.write([{ kind: 'values', at: { sheet: 'Rates', address: `B${row}` }, values: [[5000]] }]);
    const { column, totals } = await shown(await quote({ margin: '40 %', callOut: '35' }));
    expect(column('Price each')).toEqual(sampleLines.map(eachOf));
    expect(totals.get('Minimum charge supplement (minimum 5000.00)')).toBeCloseTo(5000 - sum, 8);
    expect(totals.get('Total')).toBe(5035);
    // What is typed for this quote counts instead.
    const typed = await shown(await quote({ margin: '40 %', minimumCharge: '0' }));
    expect(typed.totals.get('Total')).toBeCloseTo(sum, 8);
  });

  it('shows each rating at the line’s temperature, and what has not been checked', async () => {
    const derating = await book.content('Derating');
    const alder = 'Alder DN 16';
    await book.write([
      // The factor of 80 °C counts at 71: the next stated temperature at or above.
      { kind: 'values', at: { sheet: 'Derating', address: 'A2:C2' }, values: [[alder, 80, 0.5]] },
      {
        kind: 'values',
        at: { sheet: 'Jobs', address: 'V9:W12' },
        values: [
          ['Temperature (°F)', 'Fluid'],
          ['', ''],
          [160, 'HLP 46'],
          [176, ''],
        ],
      },
    ]);
    expect(derating.values[0]!.slice(0, 3)).toEqual(['Hose', 'Temperature (°C)', 'Factor']);
    const sheet = await quote({ margin: '40 %' });
    const { column, values } = await shown(sheet);
    const full = (hose: string) => bought.hosePressure(hose);
    const weakest = (line: Wanted, factor = 1) =>
      Math.min(full(line.hose) * factor, bought.fittingPressure(line.a), bought.fittingPressure(line.b));
    expect(column('Working pressure (bar)').slice(0, 3)).toEqual([
      weakest(sampleLines[0]!),
      weakest(sampleLines[1]!, 0.5),
      weakest(sampleLines[2]!),
    ]);
    expect(column('Rating').slice(0, 4)).toEqual([
      'temperature not stated: not derated; fluid not checked',
      // 160 °F = 71.11 °C
      'at 71.1 °C; HLP 46',
      'at 80 °C, no derating stated; fluid not checked',
      'temperature not stated: not derated; fluid not checked',
    ]);
    expect(values.flat()).not.toContain('#VALUE!');
    // Who sells by a rating reads what it rests on; the caution is in the printed part.
    expect(values.map(row => row[0]).join(' ')).toContain(RATING_CAUTION);
    // It follows the job sheet: without a temperature it is not derated.
    await book.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'V11' }, values: [['']] }]);
    const after = await shown(sheet);
    expect(after.column('Working pressure (bar)')[1]).toBe(weakest(sampleLines[1]!));
    expect(after.column('Rating')[1]).toBe('temperature not stated: not derated; HLP 46');
    // Hotter than the hose allows: no rating, and to be checked.
    await book.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'V11' }, values: [[400]] }]);
    const hot = await shown(sheet);
    expect(hot.column('Working pressure (bar)')[1]).toBe('');
    expect(hot.column('Note')[1]).toBe('To be checked before order.');
  });

  it('says where it was rounded, what rounding adds, which data it came from and how long it is valid', async () => {
    const sheet = await quote({ margin: '0.4', validDays: '14' });
    const { values } = await shown(sheet);
    expect(values[8]![0]).toMatch(/rounded up to a multiple of 0.01; .* sum of the rounded lines/);
    expect(values[5]![2]).toBe(await book.cell('Catalogue', 'B5'));
    expect(values[6]![2]).toBe(values[5]![2]);
    expect(values[7]![0]).toBe('');
    // 2026-10-05 is day 46300 of the sheet; 14 days on.
    expect([values[3]![2], values[4]![2]]).toEqual([46_300, 46_314]);
    const exact = sampleLines.reduce((sum, line) => sum + (costOf(line) / (1 - margin)) * line.quantity, 0);
    const rounded = sampleLines.reduce((sum, line) => sum + Math.round(eachOf(line) * 100) * line.quantity, 0) / 100;
    const costs = (await book.content(`${sheet} costs`)).values;
    const added = costs.find(row => row.includes('Added by rounding and least prices'))!;
    expect(added[added.indexOf('Added by rounding and least prices') + 1]).toBeCloseTo(rounded - exact, 8);
  });

  it('has its costs on a sheet of their own, line by line, with what is earned; the quote itself shows neither', async () => {
    const sheet = await quote({ margin: '40 %', breaks: '10' });
    const own = await shown(sheet);
    expect(own.values.flat().filter(cell => /cost|margin|markup|, each|labour/i.test(String(cell)))).toEqual([]);
    expect(own.values.flat().filter(cell => cell === margin)).toEqual([]);
    const { column, values } = await shown(`${sheet} costs`);
    expect(column('Line')).toEqual(own.column('Line'));
    expect(column('Price each')).toEqual(own.column('Price each'));
    sampleLines.forEach((line, index) => {
      expect(column('Cost each')[index]).toBeCloseTo(costOf(line), 9);
      expect(column('Margin earned')[index]).toBeCloseTo(1 - costOf(line) / eachOf(line), 9);
      expect(column('Margin earned')[index]).toBeGreaterThanOrEqual(margin);
      expect(column('Labour at 10')[index]).toBeCloseTo(costParts({ ...line, quantity: 10 }).labour, 9);
    });
    expect(values.find(row => row[0] === 'Margin')![1]).toBe(margin);
  });

  it('follows a price of the catalogue, and says that it has changed since', async () => {
    const sheet = await quote({ margin: '40 %' });
    const before = await shown(sheet);
    const hoses = await book.content('Hoses');
    const row = hoses.values.findIndex(cells => cells[0] === 'Rowan DN 19');
    const column = hoses.values[0]!.indexOf('Price per length (per m)');
    const address = `${String.fromCharCode(65 + column)}${row + 1}`;
    const price = hoses.values[row]![column] as number;
    await book.write([{ kind: 'values', at: { sheet: 'Hoses', address }, values: [[price * 1.1]] }]);
    const after = await shown(sheet);
    const rowan = sampleLines.findIndex(line => line.hose === 'Rowan DN 19');
    const raised = costParts(sampleLines[rowan]!, { hose: 0.1 });
    const wanted = upToCents((raised.hose + raised.fittings + raised.labour) / (1 - margin));
    expect(after.column('Price each')[rowan]).toBe(wanted);
    expect(before.column('Price each')[rowan]).not.toBe(wanted);
    expect(after.totals.get('Total')).toBeGreaterThan(before.totals.get('Total') as number);
    expect(after.values[7]![0]).toMatch(/catalogue has changed since/);
    expect(after.values[5]![2]).not.toBe(after.values[6]![2]);
  });

  it('follows margin, rounding step and a break that are changed in its cells', async () => {
    const sheet = await quote({ margin: '40 %' });
    const { values } = await shown(sheet);
    const costs = (await book.content(`${sheet} costs`)).values;
    const setting = (label: string) => {
      const row = costs.findIndex(cells => cells.includes(label));
      return { sheet: `${sheet} costs`, address: `${columnAt(costs[row]!.indexOf(label) + 1)}${row + 1}` };
    };
    const first = values.findIndex(cells => cells.includes('Quantities:'));
    const breakCell = `${columnAt(values[first]!.indexOf('Quantities:') + 1)}${first + 1}`;
    await book.write([
      { kind: 'values', at: setting('Margin'), values: [[0.25]] },
      { kind: 'values', at: setting('Prices rounded up to'), values: [[0.5]] },
      { kind: 'values', at: { sheet, address: breakCell }, values: [[3]] },
    ]);
    const { column } = await shown(sheet);
    const halves = (line: Wanted) => Math.ceil((costOf(line) / 0.75) * 2 - 1e-9) / 2;
    expect(column('Price each')).toEqual(sampleLines.map(halves));
    expect(column('Each at 3')).toEqual(sampleLines.map(line => halves({ ...line, quantity: 3 })));
  });

  it('says which part has no price, and that the total is incomplete', async () => {
    const fittings = await book.content('Fittings');
    const name = 'Larch O-ring face seal 90° DN 19';
    const row = fittings.values.findIndex(cells => cells[0] === name);
    const address = `${columnAt(fittings.values[0]!.indexOf('Price'))}${row + 1}`;
    await book.write([{ kind: 'values', at: { sheet: 'Fittings', address }, values: [['']] }]);
    const sheet = await quote({ margin: '40 %', minimumCharge: '9000' });
    const { rows, at, totals } = await shown(sheet);
    expect(at(rows[4]!, 'Price each')).toBe('no price');
    expect(at(rows[4]!, 'Each at 10')).toBe('no price');
    expect(at(rows[4]!, 'Line total')).toBe('');
    expect(at(rows[4]!, 'Note')).toBe(`No price of ${name}.`);
    const others = sampleLines.filter((_, index) => index !== 4);
    const sum = others.reduce((total, line) => total + Math.round(eachOf(line) * 100) * line.quantity, 0) / 100;
    expect(totals.get('Total, incomplete: 1 of 6 lines without a price')).toBe(sum);
  });

  it('says which rate is missing, until it is there again', async () => {
    const rates = await book.content('Rates');
    const row = rates.values.findIndex(cells => cells[0] === 'labour per hour') + 1;
    const hourly = rates.values[row - 1]![1] as number;
    await book.write([{ kind: 'values', at: { sheet: 'Rates', address: `A${row}` }, values: [['wages']] }]);
    const sheet = await quote({ margin: '40 %' });
    const before = await shown(sheet);
    expect(before.column('Price each')).toEqual(sampleLines.map(() => 'no price'));
    expect(before.column('Note')).toEqual(sampleLines.map(() => 'No rate for labour per hour.'));
    // Rates are found by their name without case, blanks, hyphens and brackets, and 0 is a rate.
    await book.write([
      { kind: 'values', at: { sheet: 'Rates', address: `A${row}:B${row}` }, values: [['Labour per-hour (€)', 0]] },
    ]);
    const free = await shown(sheet);
    expect(free.column('Note').slice(0, 3)).toEqual(['', '', '']);
    await book.write([{ kind: 'values', at: { sheet: 'Rates', address: `B${row}` }, values: [[hourly]] }]);
    expect((await shown(sheet)).column('Price each')).toEqual(sampleLines.map(eachOf));
  });

  it('names all rates where there is no table of them, and where to read about what no formula can know', async () => {
    const formula = (await book.port.read([{ sheet: 'Catalogue', address: 'B5' }]))[0]!.formulas[0]![0]!;
    const bare = formula.replace(/Rates![^,)]*/, '');
    expect(bare).not.toBe(formula);
    await book.write([{ kind: 'formulas', at: { sheet: 'Catalogue', address: 'B5' }, formulas: [[bare]] }]);
    const none = await shown(await quote({ margin: '40 %' }));
    expect(none.column('Note')[0]).toBe('No rate for set-up minutes, minutes per cut, minutes per crimp, labour per hour.');
    await book.write([{ kind: 'formulas', at: { sheet: 'Catalogue', address: 'B5' }, formulas: [[formula]] }]);
    // Shorter than both cut-offs: there is no such hose, so there is no cost of it.
    const sheet = await quote({ margin: '40 %' });
    await book.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'D10' }, values: [[10]] }]);
    const short = await shown(sheet);
    expect(short.column('Note')[0]).toBe('No price: “Hose, each” of this line, on the sheet with the costs, says why.');
  });

  it('looks the margin of the customer class up in the user’s own sheet', async () => {
    await book.write([
      { kind: 'addSheet', sheet: 'Our margins' },
      {
        kind: 'values',
        at: { sheet: 'Our margins', address: 'B2:C4' },
        values: [
          ['Class', 'Margin'],
          ['Neighbour', 0.2],
          ['Dealer', 0.3],
        ],
      },
    ]);
    expect((await marginsOfWorkbook(book.port))!.classes).toEqual([
      { name: 'Neighbour', margin: 0.2 },
      { name: 'Dealer', margin: 0.3 },
    ]);
    const sheet = await quote({ customerClass: 'Dealer' });
    const price = (share: number) => sampleLines.map(line => upToCents(costOf(line) / (1 - share)));
    expect((await shown(sheet)).column('Price each')).toEqual(price(0.3));
    await book.write([{ kind: 'values', at: { sheet: 'Our margins', address: 'C4' }, values: [[0.35]] }]);
    expect((await shown(sheet)).column('Price each')).toEqual(price(0.35));
    // A margin of the whole price is an error of the price, and the total says that it lacks all lines.
    await book.write([{ kind: 'values', at: { sheet: 'Our margins', address: 'C4' }, values: [[1]] }]);
    const broken = await shown(sheet);
    expect(broken.column('Note')[0]).toBe('No price: look at margin and rounding.');
    expect(broken.totals.get('Total, incomplete: 6 of 6 lines without a price')).toBe(0);
  });

  it('a line that should not be made says so in print, and follows the job sheet', async () => {
    // Too short, and a coupling of another family and size: neither may be made, so neither has a price.
    await book.write([
      { kind: 'values', at: { sheet: 'Jobs', address: 'D16' }, values: [[200]] },
      { kind: 'values', at: { sheet: 'Jobs', address: 'B18' }, values: [['Rowan 24° cone S straight DN 19']] },
    ]);
    const sheet = await quote({ margin: '40 %' });
    const { column, values } = await shown(sheet);
    // Three lines of the sheet must not be made: they are named and are not among the lines.
    expect(column('Note').map(note => note !== '')).toEqual(sampleLines.map(() => false));
    expect(values[9]![0]).toMatch(/^Not in this quote, to be clarified first: (?:.+, ){2}.+\.$/);
    await book.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'D11' }, values: [[150]] }]);
    expect((await shown(sheet)).column('Note')[1]).toBe(
      'No price: “Hose, each” of this line, on the sheet with the costs, says why.',
    );
    await book.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'E10' }, values: [[8]] }]);
    expect((await shown(sheet)).column('Price each')[0]).toBe(eachOf({ ...sampleLines[0]!, quantity: 8 }));
  });

  it('a hose without couplings is priced by its length: hose with scrap, set-up and cut, no crimp', async () => {
    await book.write([
      { kind: 'addSheet', sheet: 'Bare' },
      {
        kind: 'values',
        at: { sheet: 'Bare', address: 'A1:E3' },
        values: [
          ['Hose', 'Fitting A', 'Fitting B', 'Length (m)', 'Qty'],
          ['Larch DN 16', '', '', 5, 3],
          ['Larch DN 16', 'Larch 24° cone L straight DN 16', 'Larch 24° cone L straight DN 16', 1.48, 10],
        ],
      },
    ]);
    await book.port.select({ sheet: 'Bare', address: 'A2' });
    const { column } = await shown(await quote({ margin: '40 %' }));
    const hose = (5 * bought.metrePrice('Larch DN 16')) / (1 - bought.scrap);
    const labour = ((bought.rate('set-up minutes') / 3 + bought.rate('minutes per cut')) * bought.rate('labour per hour')) / 60;
    expect(column('Price each')).toEqual([upToCents((hose + labour) / 0.6), eachOf(sampleLines[3]!)]);
    expect(column('Overall length (mm)')).toEqual([5000, 1480]);
    expect(column('Note')).toEqual(['', '']);
  });

  it('copied lines stay as they are when the job sheet changes', async () => {
    const sheet = await quote({ margin: '40 %', isLinked: false });
    await book.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'E10' }, values: [[8]] }]);
    expect((await shown(sheet)).column('Price each')).toEqual(sampleLines.map(eachOf));
  });

  it('keeps its numbers in a saved file, calculated again by another reader', async () => {
    const sheet = await quote({ margin: '40 %' });
    const file = await book.save();
    book.dispose();
    const cells = await recalculate(file, builtFunctions());
    const ours = cells.filter(cell => [sheet, `${sheet} costs`].includes(cell.sheet) && cell.formula);
    expect(ours.length).toBeGreaterThan(120);
    const plain = (value: unknown) => (typeof value === 'object' && value ? (value as { error: string }).error : (value ?? ''));
    expect(ours.filter(cell => plain(cell.value) !== plain(cell.cached))).toEqual([]);
  });
});

describe('a quote with markups on parts', () => {
  it('adds them to hose, fittings, guard and labour', async () => {
    await addGuard();
    const sheet = await quote({
      method: 'markup',
      markupHose: '50 %',
      markupFittings: '80 %',
      markupGuards: '25 %',
      markupLabour: '10 %',
      breaks: '',
      least: '0',
    });
    const { column } = await shown(sheet);
    const prices = withGuard.map(line => {
      const { hose, fittings, guard, labour } = costParts(line);
      return upToCents(hose * 1.5 + fittings * 1.8 + guard * 1.25 + labour * 1.1);
    });
    expect(column('Price each')).toEqual(prices);
  });

  it('a guard that stands in several sizes is taken in the size of the hose', async () => {
    const guards = await book.content('Guards');
    const next = guards.values.length + 1;
    await book.write([
      {
        kind: 'values',
        at: { sheet: 'Guards', address: `A${next}:D${next + 1}` },
        values: [
          ['felt wrap', 'DN 6', '', 2],
          ['felt wrap', 'DN 16', '', 3],
        ],
      },
      {
        kind: 'values',
        at: { sheet: 'Jobs', address: 'V9:V12' },
        values: [['Guard'], ['felt wrap'], ['Felt Wrap'], ['felt wrap']],
      },
    ]);
    const sheet = await quote({ margin: '0' });
    const { rows, at } = await shown(sheet);
    // Cut length × price ÷ (1 − scrap).
    const costs = [2, 3].map((price, i) => ((costParts(sampleLines[i]!).cut / 1000) * price) / (1 - bought.scrap));
    const inHouse = await shown(`${sheet} costs`);
    expect(inHouse.column('Guard, each').slice(0, 2)).toEqual(costs.map(cost => expect.closeTo(cost, 9)));
    // The third line's hose has no such size among the guards.
    expect(at(rows[2]!, 'Price each')).toBe('no price');
    expect(at(rows[2]!, 'Note')).toBe('No price of felt wrap.');
  });
});

function columnAt(index: number): string {
  return index < 26 ? String.fromCharCode(65 + index) : `A${String.fromCharCode(39 + index)}`;
}
