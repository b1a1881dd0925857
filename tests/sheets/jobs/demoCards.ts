import { Decimal } from '../../../src/core/units/decimal';
import type { CardPageOptions } from '../../../src/sheets/benchcard/cardPage';
import type { Catalogue } from '../../../src/core/catalogue/catalogue';
import { partKey } from '../../../src/core/catalogue/partName';
import { measureUnit } from '../../../src/core/units/measureUnit';
import type { BenchCard } from '../../../src/sheets/jobs/benchCard';
import { benchCards } from '../../../src/sheets/jobs/benchCards';
import { jobTable } from '../../../src/sheets/jobs/jobTable';
import { readJobLine } from '../../../src/sheets/jobs/readJobLine';
import { findTables } from '../../../src/sheets/table/findTables';
import { SheetCells } from '../../../src/sheets/table/sheetCells';
import { NO_ANSWERS } from '../../../src/sheets/table/tableAnswers';
import type { RangeContent } from '../../../src/workbook/workbook';
import { sheetContent } from '../table/sheetContent';

const headings = [
  ['Line', 'Wanted for', 'Order', 'Assembly no.', 'Hose', 'Bore (mm)', 'Coupling A', 'Coupling B', 'Quantity'],
  ['Overall length (mm)', 'Cut length (mm)', 'Shortest (mm)', 'Longest (mm)', 'Twist', 'Working pressure (bar)', 'Sleeve'],
  ['Die', 'Dial A', 'Dial B', 'Crimp diameter A (mm)', 'Crimp diameter B (mm)', 'Tolerance (mm)', 'Crimp length (mm)'],
  ['Skive outside (mm)', 'Insertion depth (mm)', 'Angle A', 'Angle B', 'Note'],
].flat();

/** Invented jobs of an invented workshop: never crimp from them. */
export const demoJobs = sheetContent([
  headings,
  [1, 'Harvester 3, topper lift', 'B-41', 'H3-117', 'Larch DN 12', 12.7, '24° cone S 45°', '24° cone S 90°', 2].concat([
    1250,
    1168.5,
    1246,
    1262,
    120,
    275,
    'spiral guard',
    'D23',
    471,
    468,
    23.4,
    23.6,
    0.2,
    31,
    0,
    34,
    45,
    90,
    'mind the clamp',
  ] as any[]),
  [2, 'Share steering <left>', '', '', 'Larch DN 8', 7.9, '24° cone L straight', '24° cone L 90°', 6].concat([
    640,
    570,
    636,
    652,
    '',
    '',
    '',
    'D17',
    402,
    402,
    17.2,
    17.2,
    0.2,
    '',
    '',
    27,
    0,
    90,
    '',
  ] as any[]),
  [3, 'Turbine drive', '', '', 'Rowan DN 25', 25.4, 'split flange straight', 'split flange 90°', 1].concat([
    2180,
    2046,
    2174,
    2200,
    '',
    350,
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    2.5,
    41,
    0,
    90,
    '',
  ] as any[]),
]);

export const demoOptions: CardPageOptions = {
  rule: { factor: new Decimal(2), hold: '30 to 60 s', source: 'ISO 6605:2017, 5.2' },
  source: 'sheet Jobs (invented)',
  today: '2026-10-05',
};

const mm = measureUnit('length', 'mm')!;

/** Cards of all rows of a sheet with one table and nothing hidden. */
export function cardsOf(content: RangeContent, catalogue?: Catalogue, machine = ''): readonly BenchCard[] {
  const cells = new SheetCells(content);
  const known = (index: ReadonlyMap<string, unknown> | undefined) => index && ((name: string) => index.has(partKey(name)));
  const parts = { isHose: known(catalogue?.index.hoses), isFitting: known(catalogue?.index.fittings) };
  const { table, reader } = jobTable(cells, findTables(cells)[0]!, NO_ANSWERS, parts)!;
  const step = { value: new Decimal(1), unit: mm };
  const reading = { catalogue, step, pressureUnit: undefined, plainEnds: false, takesDone: false, takesPlanned: false };
  const rows = Array.from({ length: table.block.rows - 1 }, (_, i) => table.block.row + 1 + i);
  const lines = rows.map(row => readJobLine(reader, row, reading));
  return benchCards({ lines, catalogue }, { unit: 'mm', step, machine });
}

export const demoCards = cardsOf(demoJobs);
