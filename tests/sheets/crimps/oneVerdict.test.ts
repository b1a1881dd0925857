import { analysisOf } from '../../../src/sheets/analysis/analysisOf';
import { NO_CRIMP_FIELDS, readOptionsOf, type CrimpFields } from '../../../src/sheets/crimps/crimpFields';
import { readCrimpSheet } from '../../../src/sheets/crimps/crimpSheet';
import { judgeCrimpRow } from '../../../src/sheets/crimps/judgeCrimpRow';
import { crimpRowsOf } from '../../../src/sheets/crimps/readCrimpRows';
import { gatherRecords } from '../../../src/sheets/inspection/gatherRecords';
import { FRESH_FIELDS } from '../../../src/sheets/inspection/inspectionRecord';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

type Rows = readonly (readonly FakeCell[])[];

/** A catalogue of an invented workshop in the units and with the numbers given: never crimp from it. */
function catalogueSheets(
  unit: 'mm' | 'in',
  diameter: number,
  tolerance: number,
  spread: number | '',
): Readonly<Record<string, Rows>> {
  return {
    Hoses: [
      ['Hose', 'Family', 'Bore (mm)', 'Working pressure (bar)'],
      ['Larch DN 12', 'Larch', 12.7, 275],
    ],
    Fittings: [
      ['Fitting', 'Family', 'End form', 'Bore (mm)', 'Cut-off (mm)'],
      ['Larch cone', 'Larch', '24° cone', 12.7, 30],
    ],
    Crimps: [
      ['Hose', 'Fitting', 'Die', 'Dial', `Crimp diameter (${unit})`, `Tolerance (${unit})`, `Largest spread (${unit})`],
      ['Larch DN 12', 'Larch cone', 'D26', 400, diameter, tolerance, spread],
    ],
    Cover: [[{ formula: '=HOSE.CATALOGUE(Hoses!A1:D2, Fittings!A1:E2, Crimps!A1:G2)', value: 'CAT-1' }]],
  };
}

/** The verdicts of the first crimp in the three views. */
async function verdicts(sheets: Readonly<Record<string, Rows>>, address = 'A2', fields: Partial<CrimpFields> = {}) {
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Readings', address });
  const crimps = { ...NO_CRIMP_FIELDS, ...fields };
  const sheet = (await readCrimpSheet(workbook))!;
  const { analysis } = analysisOf(sheet, readOptionsOf(crimps));
  const [row] = crimpRowsOf(sheet, readOptionsOf(crimps)).rows;
  const entry = judgeCrimpRow(
    row!,
    row!.readings.map(reading => reading!),
  );
  const bench = { unit: 'mm', step: '1' } as const;
  const { records } = await gatherRecords(workbook, { fields: FRESH_FIELDS, crimps, otherSheet: '', pressureUnit: 'bar', bench });
  return [analysis.crimps[0]?.verdict, entry.verdict, records[0]!.crimps[0]!.verdict];
}

const PAIR = ['Larch DN 12', 'Larch cone'] as const;
const HEAD = ['Hose', 'Coupling', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Reading 3 (mm)', 'Reading 4 (mm)'] as const;
const readings = (...values: number[]): FakeCell[] => [...PAIR, ...values];
/** 0.3 mm out of round where 0.1 is allowed; the mean is on the target. */
const OUT_OF_ROUND = [24.85, 25.15, 24.85, 25.15] as const;
const OVAL = ['OVAL', 'OVAL', 'OVAL'];

describe('the largest spread counts in every view', () => {
  test('in a column of the sheet', async () => {
    const Readings = [
      [...HEAD, 'Target (mm)', 'Tolerance (mm)', 'Largest spread (mm)'],
      [...readings(...OUT_OF_ROUND), 25, 0.1, 0.1],
    ];
    expect(await verdicts({ Readings })).toEqual(OVAL);
  });
  test('above the table', async () => {
    const Readings = [
      ['Largest spread (mm)', 0.1, 'Tolerance, either way (mm)', 0.1],
      [],
      [...HEAD, 'Target (mm)'],
      [...readings(...OUT_OF_ROUND), 25],
    ];
    expect(await verdicts({ Readings }, 'A4')).toEqual(OVAL);
  });
  test('in the catalogue', async () => {
    const Readings = [HEAD, readings(...OUT_OF_ROUND)];
    expect(await verdicts({ Readings, ...catalogueSheets('mm', 25, 0.1, 0.1) })).toEqual(OVAL);
  });
  test('in the catalogue, though the sheet has target and tolerance of its own', async () => {
    const Readings = [
      [...HEAD, 'Target (mm)', 'Tolerance (mm)'],
      [...readings(...OUT_OF_ROUND), 25, 0.1],
    ];
    expect(await verdicts({ Readings, ...catalogueSheets('mm', 25, 0.1, 0.1) })).toEqual(OVAL);
  });
  test('in the field of the pane; without any, the spread is not judged', async () => {
    const Readings = [
      [...HEAD, 'Target (mm)', 'Tolerance (mm)'],
      [...readings(...OUT_OF_ROUND), 25, 0.1],
    ];
    expect(await verdicts({ Readings }, 'A2', { largestSpread: '0.1' })).toEqual(OVAL);
    expect(await verdicts({ Readings })).toEqual(['IN SPEC', 'IN SPEC', 'IN SPEC']);
  });
});

// 0.9843 in ± 0.004 in are 25.00122 mm ± 0.1016 mm at 25.4 mm an inch (NIST SP 811, appendix B): 24.89962 … 25.10282.
test.each([
  [25.103, 'LOOSE'],
  [25.102, 'IN SPEC'],
  [24.9, 'IN SPEC'],
  [24.899, 'TIGHT'],
])('a catalogue in inches, a sheet in mm: %d is %s in every view', async (reading, verdict) => {
  const Readings = [HEAD, readings(reading, reading, reading, reading)];
  expect(await verdicts({ Readings, ...catalogueSheets('in', 0.9843, 0.004, '') })).toEqual([verdict, verdict, verdict]);
});

test.each([
  [25.1, 'IN SPEC'],
  [25.11, 'LOOSE'],
])('smallest and largest diameter are the limits, not twice them: %d is %s', async (reading, verdict) => {
  const Readings = [
    [...HEAD, 'Smallest diameter (mm)', 'Largest diameter (mm)'],
    [...readings(reading, reading, reading, reading), 24.9, 25.1],
  ];
  expect(await verdicts({ Readings })).toEqual([verdict, verdict, verdict]);
});

test('a reading that cannot be has no verdict in any view', async () => {
  const Readings = [
    [...HEAD, 'Target (mm)', 'Tolerance (mm)'],
    [...readings(24.9, 24.9, 29.4, 24.9), 24.9, 0.12],
  ];
  const { workbook } = fakeWorkbook({ Readings }, { sheet: 'Readings', address: 'A2' });
  const sheet = (await readCrimpSheet(workbook))!;
  const { analysis, report } = analysisOf(sheet, readOptionsOf(NO_CRIMP_FIELDS));
  expect(analysis.crimps).toEqual([]);
  expect(report.leftOut).toEqual([
    {
      row: 2,
      reason: 'problem',
      at: 'E2',
      sentence: 'reading 3 is 29.4: it does not belong to this crimp, whose readings lie around 24.9: measure again',
    },
  ]);
});
