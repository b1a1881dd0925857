import { addressOf } from '../../../src/workbook/a1';
import { readCopySource } from '../../../src/sheets/copy/copySource';
import type { CopyWishes } from '../../../src/sheets/copy/copyWishes';
import { planCopy } from '../../../src/sheets/copy/planCopy';
import { HEADINGS, line, openLines, ROWS, SHEET } from '../../preview/headless/openLines';
import { compareAll, isSame } from './otherEngine';

let lines: Awaited<ReturnType<typeof openLines>>;
beforeEach(async () => {
  lines = await openLines();
});
afterEach(() => lines.open.dispose());

const FORMS = ['row', 'column'] as const;

async function planned(part: Partial<CopyWishes> = {}) {
  const source = await readCopySource(lines.port);
  const all = { sheets: source.names, kind: 'formulas', withCosts: true, withParts: true, target: 'file' } as const;
  return planCopy(source, { ...all, today: '2026-11-29', ...part });
}

test.each(FORMS)('in the form %s every cell becomes a plain formula, with the same result in another engine', async form => {
  const [ordinary, inWords, , unknown, , short] = ROWS;
  await lines.put([ordinary!, inWords!, unknown!, short!]);
  // A crimper that is named in the formula itself can be said in no plain one.
  for (const id of ['bench', 'price', 'qa'] as const) await lines.add(id, form, '');
  const { copy, kept } = await planned();
  const compared = compareAll(copy).filter(({ at }) => at.startsWith(SHEET));
  expect(compared.filter(({ ours, theirs }) => !isSame(ours, theirs))).toEqual([]);
  expect(kept.filter(({ sheet }) => sheet === SHEET)).toEqual([]);
  const added = (await lines.port.used(SHEET))!.values[0]!.length - HEADINGS.length;
  expect([added, compared.length]).toEqual([17, 17 * 4]);
});

test.each(FORMS)('a copy without costs leaves out the cost and keeps the price in the form %s', async form => {
  await lines.put([line(1, 1200), line(2, 900)]);
  await lines.add('price', form);
  const { copy } = await planned({ kind: 'values', withCosts: false });
  const sheet = copy.sheets.find(({ name }) => name === SHEET)!;
  const { values } = (await lines.port.used(SHEET))!;
  const copied = (heading: string) => {
    const at = values[0]!.indexOf(heading);
    return values.map((_, r) => sheet.cells[r - sheet.row]?.[at - sheet.column]?.value ?? '');
  };
  expect(copied('Cost each')).toEqual(['', '', '']);
  expect(copied('Price each')).toEqual(values.map(row => row[values[0]!.indexOf('Price each')]));
});

test('cut length and mass stay formulas where the temperature counts; pressure and check hold their values, with the reason', async () => {
  const [, , , , hot] = ROWS;
  await lines.put([hot!, line(6, 800)]);
  for (const id of ['bench', 'price'] as const) await lines.add(id, 'row', '');
  const { copy, kept } = await planned();
  const { values } = (await lines.port.used(SHEET))!;
  const place = (heading: string) =>
    addressOf({ row: 1, column: values[0]!.findIndex(each => String(each).startsWith(heading)), rows: 1, columns: 1 });
  const message = kept.filter(({ sheet }) => sheet === SHEET);
  expect(message.map(({ address }) => address).sort()).toEqual([place('Assembly check'), place('Working pressure')].sort());
  expect(message[0]!.reason).toBe('ASSEMBLY: a temperature cannot be taken into account');
  const compared = compareAll(copy).filter(({ at }) => at.startsWith(SHEET));
  expect(compared.filter(({ ours, theirs }) => !isSame(ours, theirs))).toEqual([]);
});
