import { columnsRead, roleChoices } from '../../../src/sheets/table/columnsRead';
import { leftOutGroups, readReportText, ticksOf } from '../../../src/sheets/table/readReportText';
import type { ReadReport } from '../../../src/sheets/table/tableRows';

const report: ReadReport = {
  sheet: 'Jobs',
  tables: ['A5:K40'],
  taken: Array.from({ length: 12 }, (_, i) => 6 + i),
  leftOut: [
    { row: 18, reason: 'total' },
    { row: 20, reason: 'hidden' },
    { row: 21, reason: 'hidden' },
    { row: 24, reason: 'stop', sentence: 'quantity is blank: fill it in' },
  ],
};

test('a reading is told in one sentence, what must not be made first', () => {
  expect(readReportText(report)).toBe('Jobs A5:K40: 12 rows taken; left out: 1 STOP, 2 hidden or filtered out, 1 total');
  expect(leftOutGroups(report).map(({ reason }) => reason)).toEqual(['stop', 'hidden', 'total']);
});

test('one row and nothing left out', () => {
  expect(readReportText({ ...report, tables: ['A1:C2', 'A6:C9'], taken: [2], leftOut: [] })).toBe(
    'Jobs A1:C2, A6:C9: 1 row taken',
  );
});

test('a tick is offered for what may be taken, and stays while it is set', () => {
  expect(ticksOf(report, new Set())).toEqual(['hidden']);
  expect(ticksOf({ ...report, leftOut: [] }, new Set(['done']))).toEqual(['done']);
});

test('columns with a heading are listed with what they were read as', () => {
  const table = {
    sheet: 'Jobs',
    block: { row: 4, column: 1, rows: 3, columns: 3 },
    headings: ['Hose', '', 'Shade'],
    hostTable: false,
    below: [],
  };
  expect(columnsRead(table, { hose: 1 })).toEqual([
    { column: 1, heading: 'Hose', role: 'hose' },
    { column: 3, heading: 'Shade', role: undefined },
  ]);
  expect(roleChoices([['hose', 'hose']])).toEqual([{ role: 'hose', label: 'Hose' }]);
});
