import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import type { CellValue } from '../../../src/workbook/workbook';
import { freshSettings, readSettings } from '../../../src/sheets/cutlist/cutSettings';
import { gatherCuts } from '../../../src/sheets/cutlist/gatherCuts';
import { planHoses } from '../../../src/sheets/cutlist/planHoses';
import { cutsWriting } from '../../../src/sheets/cutlist/cutsWriting';
import { cutsOptions } from '../cutlist/demoWorkbook';
import { writePurchase, type PurchasePlanning } from '../../../src/sheets/purchase/writePurchase';
import { bought, costParts, sampleLines, type Wanted } from '../quote/independentCosts';
import { asCommaTexts, PRICED } from '../quote/commaTexts';
import { openSample } from '../quote/openSample';

jest.setTimeout(60_000);

let book: Awaited<ReturnType<typeof openSample>>;
beforeEach(async () => {
  book = await openSample();
  await book.port.select({ sheet: 'Jobs', address: 'A10' });
});
afterEach(() => book.dispose());

const GUARD = 'woven sleeve 42';
/** A large order of two of the sample's lines, the second with a guard. */
const order: readonly Wanted[] = sampleLines.map((line, index) =>
  index === 3 ? { ...line, quantity: 190 } : index === 4 ? { ...line, quantity: 33, guard: GUARD } : line,
);

const enterOrder = () =>
  book.write([
    { kind: 'values', at: { sheet: 'Jobs', address: 'E13:E14' }, values: [[190], [33]] },
    { kind: 'values', at: { sheet: 'Jobs', address: 'V9' }, values: [['Guard']] },
    { kind: 'values', at: { sheet: 'Jobs', address: 'V14' }, values: [[GUARD]] },
  ]);

async function list(sheet: string) {
  await book.calculate();
  const { values } = await book.content(sheet);
  const head = values.findIndex(row => row[0] === 'Kind');
  const at = (row: readonly CellValue[], heading: string) => row[values[head]!.indexOf(heading)]!;
  const rows = values.slice(head + 1).filter(row => row[0] !== '');
  const row = (part: string) => rows.find(cells => cells[1] === part)!;
  const total = values.at(-1)!;
  return { rows, at, get: (part: string, heading: string) => at(row(part), heading), label: total[8], total: total[9] };
}

const cents = (value: number) => Math.round(value * 100) / 100;
const metres = (hose: string) =>
  order.filter(line => line.hose === hose).reduce((sum, line) => sum + (costParts(line).cut * line.quantity) / 1000, 0);

it('hose in reels by length and scrap, fittings and ferrules in packs, guards by length, with the total', async () => {
  await enterOrder();
  const { sheet, read } = await writePurchase(book.port, undefined, '2026-10-05');
  const { rows, get, label, total } = await list(sheet);
  let sum = 0;
  for (const hose of new Set(order.map(line => line.hose))) {
    const reels = Math.ceil(metres(hose) / (1 - bought.scrap) / bought.reelMetres(hose));
    expect(get(hose, 'To buy (reels, packs)')).toBe(reels);
    sum += cents(reels * bought.reelMetres(hose) * bought.metrePrice(hose));
  }
  const counts = new Map<string, number>();
  for (const { hose, a, b, quantity } of order) {
    for (const part of [a, b].flatMap(name => [name, bought.ferrule(hose, name) ?? []].flat())) {
      counts.set(part, (counts.get(part) ?? 0) + quantity);
    }
  }
  for (const [part, count] of counts) {
    const packs = Math.ceil(count / bought.pack(part));
    expect([get(part, 'Needed'), get(part, 'To buy (reels, packs)')]).toEqual([count, packs]);
    sum += cents(packs * bought.pack(part) * bought.price(part));
  }
  // The guard is cut as long as the hose of each of the 33, and wasted alike.
  const guarded = ((costParts(order[4]!).cut / 1000) * 33) / (1 - bought.scrap);
  expect(get(GUARD, 'Bought')).toBeCloseTo(guarded, 6);
  sum += cents(guarded * bought.guardPrice(GUARD));
  expect(rows).toHaveLength(new Set(order.map(line => line.hose)).size + counts.size + 1);
  expect(get('Larch DN 16', 'To buy (reels, packs)')).toBe(3);
  expect([label, total]).toEqual(['Total', cents(sum)]);
  // Lines that must not be made: nothing is bought for them, and the list says so on top.
  expect(read.stops.map(({ sentence }) => sentence)).toEqual([
    expect.stringMatching(/^too short/),
    expect.stringMatching(/^rating missing/),
    expect.stringMatching(/^families differ.*no crimp data/),
  ]);
  const { values } = await book.content(sheet);
  expect(values[5]![0]).toMatch(/^STOP, nothing bought for: .*no crimp data/);
});

it('prices and scrap that are text with a decimal comma are bought as numbers', async () => {
  await enterOrder();
  const before = await list((await writePurchase(book.port, undefined, '2026-10-05')).sheet);
  for (const [sheet, heading] of PRICED) await asCommaTexts(book, sheet, heading);
  await book.port.select({ sheet: 'Jobs', address: 'A10' });
  const { sheet } = await writePurchase(book.port, undefined, '2026-10-05');
  const after = await list(sheet);
  expect(await book.cell(sheet, 'C5')).toBe(bought.scrap);
  expect(after.rows).toEqual(before.rows);
  expect([after.label, after.total]).toEqual(['Total', before.total]);
});

it('names the lines that no new reel has in one piece', async () => {
  await enterOrder();
  const { values } = await book.content('Jobs');
  const head = values.findIndex(row => row.includes('Overall length (mm)'));
  const column = String.fromCharCode(65 + values[head]!.indexOf('Overall length (mm)'));
  await book.write([{ kind: 'values', at: { sheet: 'Jobs', address: `${column}13` }, values: [[120_000]] }]);
  const { sheet } = await writePurchase(book.port, undefined, '2026-10-05');
  const { get } = await list(sheet);
  const long = { ...order[3]!, overall: 120_000 };
  expect(get(long.hose, 'Note')).toBe(
    `longer than a reel of 100000 mm: row 13: 190 × ${costParts(long).cut} mm; cut lengths plus scrap; ends left on reels are not counted`,
  );
});

it('what is typed as in stock is taken off, and a missing price makes the total incomplete', async () => {
  await enterOrder();
  const fittings = await book.content('Fittings');
  const name = 'Larch O-ring face seal 90° DN 19';
  const at = `${String.fromCharCode(65 + fittings.values[0]!.indexOf('Price'))}${fittings.values.findIndex(row => row[0] === name) + 1}`;
  await book.port.write([{ kind: 'values', at: { sheet: 'Fittings', address: at }, values: [['']] }]);
  const { sheet } = await writePurchase(book.port, undefined, '2026-10-05');
  const before = await list(sheet);
  expect(before.get(name, 'Amount')).toBe('no price');
  expect(before.label).toBe('Total, incomplete: 1 without a price');
  const part = 'Larch 24° cone L straight DN 16';
  const row = (await book.content(sheet)).values.findIndex(cells => cells[1] === part) + 1;
  await book.port.write([
    { kind: 'values', at: { sheet, address: `E${row}` }, values: [[(before.get(part, 'Needed') as number) - 11]] },
  ]);
  const after = await list(sheet);
  expect(after.get(part, 'To buy (reels, packs)')).toBe(Math.ceil(11 / bought.pack(part)));
  expect(after.total).toBeLessThan(before.total as number);
});

it('says the share of a reel, and hose is bought by the metre where its row says so', async () => {
  await enterOrder();
  const { sheet } = await writePurchase(book.port, undefined, '2026-10-05', {}, 'length');
  const { get, rows, at } = await list(sheet);
  const hoses = [...new Set(order.map(line => line.hose))];
  for (const hose of hoses) {
    const needed = metres(hose) / (1 - bought.scrap);
    expect(get(hose, 'Share of a reel')).toBeCloseTo(needed / bought.reelMetres(hose), 9);
    expect([get(hose, 'To buy (reels, packs)'), get(hose, 'Buy by')]).toEqual(['', 'm']);
    expect(get(hose, 'Bought')).toBeCloseTo(needed, 6);
    expect(get(hose, 'Amount')).toBe(cents(needed * bought.metrePrice(hose)));
  }
  for (const row of rows.filter(cells => cells[0] !== 'Hose'))
    expect([at(row, 'Share of a reel'), at(row, 'Buy by')]).toEqual(['', '']);
  // One hose as a reel all the same.
  const row = (await book.content(sheet)).values.findIndex(cells => cells[1] === hoses[0]) + 1;
  await book.port.write([{ kind: 'values', at: { sheet, address: `L${row}` }, values: [['reel']] }]);
  const after = await list(sheet);
  const reels = Math.ceil(metres(hoses[0]!) / (1 - bought.scrap) / bought.reelMetres(hoses[0]!));
  expect([after.get(hoses[0]!, 'To buy (reels, packs)'), after.get(hoses[0]!, 'Bought')]).toEqual([
    reels,
    reels * bought.reelMetres(hoses[0]!),
  ]);
  expect(after.get(hoses[1]!, 'To buy (reels, packs)')).toBe('');
});

describe('by a cut plan', () => {
  const planning = (rackSheet: string | undefined): PurchasePlanning => ({
    settings: readSettings({ ...freshSettings('mm'), kerf: '3', squaring: '20', step: '0.1', keepsNothing: true }).settings!,
    rackSheet,
    solve: solveCutPlan,
    onProgress: () => undefined,
    signal: { aborted: false },
  });

  it('new reels only: as many as the pieces take with kerf and squaring', async () => {
    await enterOrder();
    const { sheet } = await writePurchase(book.port, planning(undefined), '2026-10-05');
    const { get } = await list(sheet);
    // Pieces of one length on a reel of 100 m: worked out by hand. 900 mm pieces of the same hose fill the ends.
    const cut = costParts(order[3]!).cut;
    const onAReel = Math.floor((100_000 - 20 + 3) / (cut + 3));
    expect(get('Larch DN 16', 'To buy (reels, packs)')).toBe(Math.ceil(190 / onAReel));
    expect(get('Larch DN 16', 'Note')).toMatch(/cut plan, new reels only/);
    expect(get('Rowan DN 19', 'To buy (reels, packs)')).toBe(1);
  });

  it('with the rack: nothing to buy where it is enough, the rest where it is not', async () => {
    await enterOrder();
    await book.port.write([
      { kind: 'addSheet', sheet: 'Our rack' },
      {
        kind: 'values',
        at: { sheet: 'Our rack', address: 'A1:C3' },
        values: [
          ['Hose', 'Length (mm)', 'Quantity'],
          ['Rowan DN 19', 5000, 1],
          ['Larch DN 16', 95_000, 2],
        ],
      },
    ]);
    const { sheet } = await writePurchase(book.port, planning('Our rack'), '2026-10-05');
    const { get } = await list(sheet);
    expect([get('Rowan DN 19', 'To buy (reels, packs)'), get('Rowan DN 19', 'Amount')]).toEqual([0, 0]);
    expect(get('Rowan DN 19', 'Note')).toBe('cut plan: the rack is enough');
    expect(get('Larch DN 16', 'To buy (reels, packs)')).toBe(1);
    expect(get('Larch DN 16', 'Note')).toMatch(/cut plan, with the rack: the least that is enough/);
  });

  it('settings in another unit than the catalogue’s are refused', async () => {
    const inches = readSettings({ ...freshSettings('in'), kerf: '1/8', keepsNothing: true }).settings!;
    await expect(writePurchase(book.port, { ...planning(undefined), settings: inches }, '2026-10-05')).rejects.toThrow(
      'The catalogue is in mm: set the unit of the cut plan to mm',
    );
  });
});

describe('by the cut list that stands', () => {
  /** A rack that is enough for three of the hoses, and the cut list that the view Cut list writes from it. */
  async function cutList(): Promise<string> {
    await book.port.write([
      { kind: 'addSheet', sheet: 'Our rack' },
      {
        kind: 'values',
        at: { sheet: 'Our rack', address: 'A1:C4' },
        values: [
          ['Hose', 'Length (mm)', 'Quantity'],
          ['Rowan DN 19', 5000, 1],
          ['Larch DN 16', 95_000, 4],
          ['Larch DN 19', 99_000, 1],
        ],
      },
    ]);
    const { settings } = readSettings({ ...freshSettings('mm'), kerf: '3', squaring: '20', step: '1', keepsNothing: true });
    const gathered = await gatherCuts(book.port, 'Our rack', settings!, '2026-10-04');
    const plans = await planHoses(gathered, solveCutPlan, () => undefined, { aborted: false });
    const writing = await cutsWriting(book.port, gathered, plans, cutsOptions);
    await book.port.write(writing.changes);
    const sheet = writing.cutList;
    return sheet;
  }
  const buy = async () => list((await writePurchase(book.port, 'list', '2026-10-05')).sheet);

  it('nothing is bought of hoses that it cuts from the rack, the others go by length; each says which', async () => {
    await enterOrder();
    await cutList();
    const { get } = await buy();
    expect([get('Rowan DN 19', 'To buy (reels, packs)'), get('Rowan DN 19', 'Amount')]).toEqual([0, 0]);
    expect(get('Rowan DN 19', 'Note')).toBe('sheet Cut list: cut from 1 piece of the rack, nothing to buy');
    // 66 pieces of 1,420 mm on a reel of 95 m, as the plan of new reels above counts them; 190 of them and one more take three.
    expect(get('Larch DN 16', 'Note')).toBe('sheet Cut list: cut from 3 pieces of the rack, nothing to buy');
    expect(get('Alder DN 6', 'To buy (reels, packs)')).toBe(1);
    expect(get('Alder DN 6', 'Note')).toMatch(/^not all of it stands in sheet Cut list: cut lengths plus scrap/);
  });

  it('a line that has changed since is not in it any more', async () => {
    await enterOrder();
    await cutList();
    await book.write([
      { kind: 'values', at: { sheet: 'Jobs', address: 'E15' }, values: [[2]] },
      { kind: 'values', at: { sheet: 'Jobs', address: 'D14' }, values: [[900]] },
    ]);
    const { get } = await buy();
    expect([get('Rowan DN 19', 'To buy (reels, packs)'), get('Larch DN 19', 'To buy (reels, packs)')]).toEqual([1, 1]);
    expect(get('Larch DN 19', 'Note')).toMatch(/^not all of it stands/);
    expect(get('Larch DN 16', 'To buy (reels, packs)')).toBe(0);
  });

  it('a list that was made from another sheet says nothing about these lines', async () => {
    const sheet = await cutList();
    await book.port.write([
      { kind: 'values', at: { sheet, address: 'A2' }, values: [['From sheet Week (9 lines) and rack Our rack, 2026-10-04']] },
    ]);
    await expect(buy()).rejects.toThrow('No cut list of this workbook was made from sheet Jobs');
  });
});
