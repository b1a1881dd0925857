import { readRack } from '../../../src/sheets/rack/rack';
import { unusableHose } from '../../../src/sheets/rack/unusableHose';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

test('hose that is there but may not be used is counted with why and where', async () => {
  const rows = [
    ['Hose', 'Length (m)', 'Status'],
    ['Larch DN 12', 40, ''],
    ['larch DN 12', 30, 'Quarantine'],
    ['Larch DN 12', 'some', ''],
    ['Larch DN 12', 20, 'Q7'],
  ];
  const { workbook } = fakeWorkbook({ Rack: rows }, { sheet: 'Rack', address: 'A1' });
  const rack = (await readRack(workbook, 'Rack'))!;
  const unusable = unusableHose(rack, rack.rows);
  expect(unusable('Larch DN 12')).toBe(
    '1 too old (row 2), 1 with Status: Quarantine (row 3), 1 not readable (row 4), 1 with Status: Q7; say whether it may be used (row 5)',
  );
  expect(unusable('Birch DN 8')).toBe('');
});
