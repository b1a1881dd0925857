import { measureUnit } from '../../../src/core/units/measureUnit';
import { jobTable, readQuoteLines } from '../../../src/sheets/jobs/quoteLine';
import { sheetContent } from '../table/sheetContent';

const MM = measureUnit('length', 'mm')!;
const INCH = measureUnit('length', 'in')!;

const jobs = [
  ['Our week'],
  ['No.', 'For', 'Hose', 'End 1', 'End 2', 'Overall (mm)', 'Qty', 'Guard', 'Cut length (mm)'],
  [1, 'Lift', 'Alder DN 6', 'straight', 'elbow', 620, 4, 'sleeve', 590],
  [2, 'Tilt', 'Alder DN 6', 'straight', '', 620, 4, '', ''],
  [],
  [3, 'Swing', 'Alder DN 6', 'straight', 'elbow', 'long', 1, '', ''],
  [4, 'Boom', 'Alder DN 6', 'straight', 'elbow', 700, '', '', ''],
  [5, 'Drum', 'Alder DN 8', 'straight', 'straight', 700, 2, '', 'soon'],
];

test('lines come with their cells, rows that cannot be used with the reason', () => {
  const { lines, problems } = readQuoteLines(jobTable(sheetContent(jobs))!, MM);
  expect(lines.map(({ row, quantity, guard }) => [row, quantity, guard])).toEqual([
    [3, 4, 'sleeve'],
    [8, 2, ''],
  ]);
  expect(lines[0]!.places).toMatchObject({ line: 'A3', hose: 'C3', overall: 'F3', guard: 'H3' });
  expect(lines[1]!.places.guard).toBeUndefined();
  expect(lines.map(line => line.cutLength?.toNumber())).toEqual([590, undefined]);
  expect(problems.map(({ row, sentence }) => [row, sentence])).toEqual([
    [4, 'fitting B is blank: fill it in'],
    [6, expect.stringContaining('overall length is "long"')],
    [7, 'quantity is blank: enter how many'],
  ]);
});

test('only the picked rows are read', () => {
  expect(readQuoteLines(jobTable(sheetContent(jobs))!, MM, new Set([8])).lines.map(line => line.row)).toEqual([8]);
});

test('lengths in another unit than the catalogue’s are refused', () => {
  expect(() => readQuoteLines(jobTable(sheetContent(jobs))!, INCH)).toThrow(
    'The column Overall (mm) is in mm, the catalogue in in: they must be the same.',
  );
});

test('inches typed as text are read where the catalogue is in inches', () => {
  const inches = [
    ['Hose', 'Fitting A', 'Fitting B', 'Overall length (in)', 'Quantity'],
    ['Alder', 'a', 'b', '27 1/2"', 1],
  ];
  expect(readQuoteLines(jobTable(sheetContent(inches))!, INCH).lines[0]!.overall.toNumber()).toBe(27.5);
});

test('a sheet without the five columns holds no job table', () => {
  expect(jobTable(sheetContent([['Hose', 'Cut length', 'Quantity']]))).toBeUndefined();
});
