import { compareAll, isSame } from '../../sheets/copy/otherEngine';
import { readCopySource } from '../../../src/sheets/copy/copySource';
import { planCopy } from '../../../src/sheets/copy/planCopy';
import { missingFormulas } from '../../../src/sheets/columns/missingFormulas';
import { rateFittingsInPsi } from '../../sheets/quote/psiFittings';
import { FORMS, line, openLines, ROWS, SHEET, withoutSentences } from './openLines';

let lines: Awaited<ReturnType<typeof openLines>>;
beforeEach(async () => {
  lines = await openLines();
  await rateFittingsInPsi(lines.port);
  await lines.open.calculate();
});
afterEach(() => lines.open.dispose());

test.each(FORMS)('a rating that was converted is read in whole bar, never above what it is, in the form %s', async form => {
  await lines.put(ROWS);
  const { columns } = await lines.add('price', form);
  const [first, , blank, unknown] = withoutSentences(columns)['Working pressure (bar)']!;
  // 3010 psi are 207.53 bar; a blank row stays blank, and a coupling that nobody knows is an error as in the other columns.
  expect([first, blank, unknown]).toEqual([207, '', '#N/A']);
  expect(missingFormulas(await lines.view()).rows).toEqual([]);
});

test.each(FORMS)('rows appended below get it, and a copy without Benchrow has the same, in the form %s', async form => {
  await lines.put([line(1, 1200), line(2, 900)]);
  await lines.add('price', form, '');
  await lines.put([line(3, 1500)], 4);
  await lines.port.write(missingFormulas(await lines.view()).changes);
  await lines.open.calculate();
  expect((await lines.standing())['Working pressure (bar)']).toEqual([207, 207, 207]);
  const source = await readCopySource(lines.port);
  const { copy, kept } = planCopy(source, {
    ...{ sheets: source.names, kind: 'formulas', withCosts: true, withParts: true, target: 'file', today: '2026-11-29' },
  });
  const compared = compareAll(copy).filter(({ at }) => at.startsWith(SHEET));
  expect(compared.filter(({ ours, theirs }) => !isSame(ours, theirs))).toEqual([]);
  expect(compared.filter(({ ours }) => ours === 207)).toHaveLength(3);
  expect(kept.filter(({ sheet }) => sheet === SHEET)).toEqual([]);
});
