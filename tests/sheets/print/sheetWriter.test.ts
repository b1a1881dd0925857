import { SheetWriter } from '../../../src/sheets/print/sheetWriter';

test('the sheet comes first, then the widths of its columns, then all else in the order asked for', () => {
  const changes = new SheetWriter('New')
    .values(0, 0, [['A long heading', 2]])
    .style(0, 0, 1, 2, { wrap: true })
    .widths(40, 60)
    .done();
  expect(changes.map(change => ('at' in change ? `${change.kind} ${change.at.address}` : change.kind))).toEqual([
    'addSheet',
    'style A1',
    'style B1',
    'values A1:B1',
    'style A1:B1',
  ]);
});
