import { Decimal } from '../../../src/core/units/decimal';
import { dayNumber } from '../../../src/core/units/sheetDate';
import { benchCards } from '../../../src/sheets/jobs/benchCards';
import { cardPage } from '../../../src/sheets/benchcard/cardPage';
import { pickList } from '../../../src/sheets/week/pickList';
import { orderOfJobs } from '../../../src/sheets/week/orderOfJobs';
import { orderSheet, pickSheet } from '../../../src/sheets/week/weekSheets';
import { itemText } from '../../../src/sheets/week/weekText';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { jobsOf, METRIC } from '../pieces/pieceSheets';

const DUE = ['Due', dayNumber('2026-10-09')!, 'Friday', ''];

test('due dates stand on cards and in the order of work: a day of the sheet as a date, other words as they are', async () => {
  const { workbook } = fakeWorkbook(
    { Jobs: METRIC.map((row, index) => [...row, DUE[index]!]) },
    { sheet: 'Jobs', address: 'A2' },
  );
  const jobs = await jobsOf(workbook, 'mm');
  const step = { value: new Decimal(1), unit: jobs.lines[0]!.cutLength!.unit };
  const html = cardPage(benchCards(jobs, { unit: 'mm', step, machine: '' }), {
    rule: { factor: new Decimal(2), hold: '', source: '' },
    source: 'Jobs',
    today: '2026-10-05',
  });
  expect(html).toContain('due 2026-10-09');
  expect(html).toContain('due Friday');
  const order = orderOfJobs(jobs, { machine: '', die: '', dial: '', share: new Decimal('0.5') }, 'mm');
  const texts = order.groups.flatMap(({ items }) => items.map(itemText));
  expect(texts.filter(text => text.startsWith('Line 1')).every(text => text.endsWith(', 4 off, due 2026-10-09'))).toBe(true);
  expect(texts.some(text => text.startsWith('Line 2') && text.endsWith(', due Friday'))).toBe(true);
  expect(texts.some(text => text.startsWith('Line 3') && text.endsWith('1 off'))).toBe(true);
  const values = orderSheet('Order', order, 'Jobs').flatMap(change => (change.kind === 'values' ? change.values : []));
  const headings = values.find(row => row.includes('Due'))!;
  const line = values.find(row => row[headings.indexOf('Line')] === '1')!;
  expect(line[headings.indexOf('Due')]).toBe('2026-10-09');
});

test('the pick list says when the first of the lines that need a part is due, and when each is', async () => {
  const rows = [
    ['Line', 'Hose', 'Coupling A', 'Coupling B', 'Qty', 'Overall (mm)', 'Cut length (mm)', 'Due'],
    [1, 'Larch DN 12', 'cone straight', 'cone straight', 4, 1250, 1168, dayNumber('2026-10-12')!],
    [2, 'Larch DN 12', 'cone straight', 'cone straight', 2, 900, 818, dayNumber('2026-10-09')!],
    [3, 'Larch DN 8', 'cone L', 'cone L', 3, 640, 570, 'Friday'],
  ];
  const picked = async (jobs: typeof rows) => {
    const { workbook } = fakeWorkbook({ Jobs: jobs }, { sheet: 'Jobs', address: 'A2' });
    const written = pickSheet('Pick', pickList(await jobsOf(workbook, 'mm'), [], 'mm'), 'Jobs');
    const table = written.flatMap(change => (change.kind === 'values' ? [change.values] : [])).find(values => values.length > 3)!;
    return table.map(row => [row[2], row[5], row[6]]);
  };
  expect(await picked(rows)).toEqual([
    ['Part', 'First due', 'For lines'],
    ['Larch DN 12', '2026-10-09', '1 (4672, due 2026-10-12), 2 (1636, due 2026-10-09)'],
    ['Larch DN 8', 'Friday', '3 (1710, due Friday)'],
    ['cone straight', '2026-10-09', '1 (8, due 2026-10-12), 2 (4, due 2026-10-09)'],
    ['cone L', 'Friday', '3 (6, due Friday)'],
  ]);
  expect((await picked(rows.map(row => row.slice(0, 7))))[0]).toEqual(['Part', 'For lines', 'From']);
});
