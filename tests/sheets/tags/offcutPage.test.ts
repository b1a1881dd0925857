import { Decimal } from '../../../src/core/units/decimal';
import { offcutsOf } from '../../../src/sheets/cutlist/offcuts';
import type { PlannedReel } from '../../../src/sheets/cutlist/plannedReel';
import { labelSheets } from '../../../src/sheets/tags/labelSheets';
import { offcutPage } from '../../../src/sheets/tags/offcutPage';

const reel = (left: number, isKept: boolean): PlannedReel => ({
  rack: {
    row: 2,
    hose: 'Larch <DN 12>',
    length: new Decimal(9800),
    quantity: 1,
    place: 'A4',
    reel: 'R7',
    lot: 'L67',
    made: '2025-11-01',
  },
  cuts: [],
  squaring: new Decimal(0),
  kerf: new Decimal(3),
  left: new Decimal(left),
  isKept,
  isTooOld: false,
});

test('an end that is kept gets a label with hose, length, lot and day; one that is scrap gets none', () => {
  const offcuts = offcutsOf([reel(2102, true), reel(90, false)], 'mm', '2026-10-05');
  expect(offcuts).toEqual([
    { hose: 'Larch <DN 12>', length: '2102 mm', lot: 'L67', place: 'A4, reel R7', made: '2025-11-01', day: '2026-10-05' },
  ]);
  const page = offcutPage(offcuts, labelSheets[0]);
  expect(page.match(/class="offcut"/g)).toHaveLength(1);
  for (const text of ['Larch &lt;DN 12&gt;', '2102 mm', 'lot L67 · from A4, reel R7', 'made 2025-11-01 · cut 2026-10-05']) {
    expect(page).toContain(text);
  }
});

test.each(labelSheets.map(sheet => [sheet.name, sheet] as const))('as many pages of %s as there are labels for', (_, sheet) => {
  const count = sheet.columns * sheet.rows + 1;
  const offcuts = offcutsOf(
    Array.from({ length: count }, () => reel(2102, true)),
    'mm',
    '2026-10-05',
  );
  expect(offcutPage(offcuts, sheet).match(/<section class="sheet"/g)).toHaveLength(2);
});
