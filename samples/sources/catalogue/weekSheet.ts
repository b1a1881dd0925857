import type { Workbook } from 'exceljs';
import { at, call, named } from '../book/call';
import { colourVerdicts, dressRows, putHeadings, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import { HANDLE } from './lookedUpJobs';

const HEADING_ROW = 5;

type Job = readonly [
  wantedFor: string,
  hose: string,
  couplingA: string,
  couplingB: string,
  quantity: number,
  overall: number,
  twist?: number,
];

/** A week's assemblies, all of which can be made: from them come cut list, bench cards and tags. */
const jobs: readonly Job[] = [
  ['Harvester 3, topper lift', 'Larch DN 12', 'Larch 24° cone S straight DN 12', 'Larch 24° cone S 90° DN 12', 2, 1250],
  ['Harvester 3, topper tilt', 'Larch DN 10', 'Larch 24° cone S 90° DN 10', 'Larch 24° cone S 90° DN 10', 2, 985, 90],
  ['Cleaning loader, pick-up lift', 'Larch DN 16', 'Larch 24° cone L straight DN 16', 'Larch 24° cone L 45° DN 16', 4, 1120],
  ['Cleaning loader, swing', 'Larch DN 12', 'Larch 24° cone S straight DN 12', 'Larch 24° cone S straight DN 12', 6, 1480],
  ['Cleaning loader, boom', 'Rowan DN 19', 'Rowan 24° cone S straight DN 19', 'Rowan 24° cone S straight DN 19', 2, 3400],
  ['Haul tractor 2, steering', 'Larch DN 10', 'Larch 24° cone S straight DN 10', 'Larch 24° cone S straight DN 10', 5, 740],
  ['Haul trailer 5, tipping ram', 'Alder DN 16', 'Alder 24° cone L 45° DN 16', 'Alder 24° cone L straight DN 16', 2, 2150],
  ['Cleaning loader, floor', 'Larch DN 19', 'Larch O-ring face seal 90° DN 19', 'Larch O-ring face seal 90° DN 19', 2, 860, 180],
];

const computed = (heading: string, format: string, width = 11): SheetColumn => ({
  heading,
  width,
  format,
  align: 'right',
  kind: 'computed',
});

const columns: readonly SheetColumn[] = [
  { heading: 'Line', width: 6, align: 'center' },
  { heading: 'Assembly no.', width: 12, align: 'center' },
  { heading: 'Wanted for', width: 30 },
  { heading: 'Hose', width: 14 },
  { heading: 'Coupling A', width: 33 },
  { heading: 'Coupling B', width: 33 },
  { heading: 'Quantity', width: 10, format: '0', align: 'right' },
  { heading: 'Overall length (mm)', width: 12, format: '0.0', align: 'right' },
  { heading: 'Twist angle (°)', width: 10, format: '0', align: 'right' },
  computed('Cut length (mm)', '0.0'),
  computed('Working pressure (bar)', '0'),
  computed('Mass (kg)', '0.00'),
  { heading: 'Can be made', width: 26, kind: 'computed' },
  computed('Bore (mm)', '0.0', 9),
  computed('Shortest (mm)', '0.0'),
  computed('Longest (mm)', '0.0'),
];

/** Adds the week: jobs from which cut list, bench cards and tags are made with this workbook's catalogue and rack. */
export async function addWeek(book: Workbook): Promise<void> {
  const sheet = book.addWorksheet('Week');
  const catalogue = named('Catalogue', 'Catalogue', HANDLE);
  setWidths(sheet, columns);
  putTitle(
    sheet,
    'This week: from here to the bench',
    'Select these lines, open the tab Week in the pane: cut list from the sheet Rack, then bench cards and tags.',
    `${INVENTED}. Twist angle: looking along the hose with the near end at six o’clock, counter-clockwise.`,
  );
  putHeadings(sheet, HEADING_ROW, columns);
  dressRows(sheet, HEADING_ROW + 1, HEADING_ROW + jobs.length, columns);
  for (const [index, [wantedFor, hose, couplingA, couplingB, quantity, overall, twist]] of jobs.entries()) {
    const row = HEADING_ROW + 1 + index;
    const typed = [
      index + 1,
      `W41-${String(index + 1).padStart(2, '0')}`,
      wantedFor,
      hose,
      couplingA,
      couplingB,
      quantity,
      overall,
    ];
    typed.forEach((value, column) => (sheet.getCell(row, column + 1).value = value));
    if (twist !== undefined) sheet.getCell(row, 9).value = twist;
    const [hoseAt, a, b, overallAt] = ['D', 'E', 'F', 'H'].map(column => at(`${column}${row}`));
    await putFormula(sheet, `J${row}`, call('ASSEMBLY', catalogue, hoseAt, a, b, overallAt));
    await putFormula(sheet, `N${row}`, call('HOSEDATA', catalogue, hoseAt, 'bore'));
    await putFormula(sheet, `O${row}`, call('LENGTHLIMITS', overallAt, at(`N${row}`), 'mm'));
  }
  colourVerdicts(sheet, `M${HEADING_ROW + 1}:M${HEADING_ROW + jobs.length}`);
  setUpSheet(sheet, HEADING_ROW, 3);
}
