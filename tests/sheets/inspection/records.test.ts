import { Decimal } from '../../../src/core/units/decimal';
import type { Change } from '../../../src/workbook/workbook';
import { gatherRecords } from '../../../src/sheets/inspection/gatherRecords';
import type { RecordWishes } from '../../../src/sheets/inspection/recordSources';
import { NO_CRIMP_FIELDS } from '../../../src/sheets/crimps/crimpFields';
import { FRESH_FIELDS, NOT_NOTED, type RecordOptions } from '../../../src/sheets/inspection/inspectionRecord';
import { proofFacts, recordedLimits, recordStops, workFacts } from '../../../src/sheets/inspection/recordFacts';
import { recordPage } from '../../../src/sheets/inspection/recordPage';
import { recordGrowth } from '../../../src/sheets/inspection/recordsLog';
import { recordSheet } from '../../../src/sheets/inspection/recordSheet';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { gate, registerSheets } from '../machines/registerSheets';
import { recordSheets } from './recordSheets';

const wishes: RecordWishes = {
  fields: FRESH_FIELDS,
  crimps: NO_CRIMP_FIELDS,
  otherSheet: 'Jobs',
  pressureUnit: 'bar',
  bench: { unit: 'mm', step: '1' },
};
const options: RecordOptions = {
  fields: FRESH_FIELDS,
  result: NOT_NOTED,
  handle: 'CAT-1',
  source: 'sheet Readings',
  today: '2026-03-09',
};

const bookAt = (sheet: string, address: string) => fakeWorkbook(recordSheets, { sheet, address }).workbook;
const valueOf = (facts: readonly { label: string; value: string }[], label: string) =>
  facts.find(fact => fact.label === label)!.value;

describe('gathering', () => {
  it('puts the rows of a line together, counts its pieces, and takes order and pressure from the job lines', async () => {
    const { records } = await gatherRecords(bookAt('Readings', 'A2'), wishes);
    expect(records.map(({ title, label, crimps }) => [title, label, crimps.length])).toEqual([
      ['Line 1', 'Topper <lift>', 4],
      ['Line 2', '', 1],
    ]);
    const [first] = records;
    expect(first!.crimps.map(({ piece, end, verdict }) => [piece, end, verdict])).toEqual([
      ['1', 'A', 'IN SPEC'],
      ['1', 'B', 'LOOSE'],
      ['2', 'A', 'IN SPEC'],
      ['2', 'B', undefined],
    ]);
    const facts = workFacts(first!, options);
    expect(
      ['Assembly', 'Order', 'Quantity', 'Hose lot', 'Machine', 'Die set', 'Catalogue'].map(label => valueOf(facts, label)),
    ).toEqual(['H3-117', 'B-41', '2', 'L70, L71', 'Gate', 'D23', 'CAT-1']);
    // Proof at twice the working pressure: ISO 6605:2017, 5.2.
    expect(valueOf(proofFacts(first!, options), 'Proof pressure')).toBe('550 bar');
  });

  it('rounds the cut length to the step said with the cut list, as cards do', async () => {
    const headings = ['Line', 'Hose', 'Coupling A', 'Coupling B', 'Overall length (mm)', 'Cut length (mm)', 'Quantity'];
    const line = [1, 'Larch DN 12', 'Larch cone', 'Larch cone', 1000, 940.5, 1, 999.8, 1000.2];
    const { workbook } = fakeWorkbook(
      { ...registerSheets(gate), Jobs: [[...headings, 'Shortest (mm)', 'Longest (mm)'], line] },
      { sheet: 'Jobs', address: 'A2' },
    );
    const problems = async (bench: RecordWishes['bench']) => {
      const { records } = await gatherRecords(workbook, { ...wishes, otherSheet: '', bench });
      return records[0]!.problems.join();
    };
    expect(await problems({ unit: 'mm', step: '1' })).toMatch(/no step keeps the finished length within its limits/);
    expect(await problems({ unit: 'mm', step: '0.5' })).not.toMatch(/step/);
    // A step said in inches says nothing of a sheet in millimetres.
    expect(await problems({ unit: 'in', step: '0.5' })).toMatch(/no step keeps/);
  });

  it('invents nothing: what nobody said is blank, a reading that cannot be read is named', async () => {
    const { records } = await gatherRecords(bookAt('Readings', 'A2'), { ...wishes, otherSheet: '' });
    const [first, second] = records;
    const blank = [...workFacts(first!, options), ...proofFacts(first!, options)]
      .filter(({ value }) => value === '')
      .map(({ label }) => label);
    expect(blank).toEqual([
      'Workshop',
      'Customer',
      'Record no.',
      'Assembly',
      'Order',
      'Quantity',
      'Hose made',
      'Coupling lot',
      'Crimped on',
      'Operator',
      'Caliper',
      'Caliper calibrated',
      'Uncertainty U (k = 2)',
      'Working pressure',
      'Proof pressure',
      'Pressure reached',
      'Medium',
      'Gauge',
      'Gauge calibrated',
      'Held for',
      'Tested by',
    ]);
    expect(recordStops(second!)).toEqual([expect.stringMatching(/Piece 1, end A: reading 2 is "abc"/)]);
    expect(second!.crimps[0]!.verdict).toBeUndefined();
  });

  it('takes die and dial of the crimp from the sheet only, never what the catalogue wants now', async () => {
    const [headings, ...rows] = recordSheets.Readings!;
    const kept = headings!.map((_, column) => column).filter(column => !['Die', 'Dial'].includes(String(headings![column])));
    const readings = [headings!, ...rows].map(row => kept.map(column => row[column]!));
    const sheets = { ...registerSheets(gate), Readings: readings };
    const { workbook } = fakeWorkbook(sheets, { sheet: 'Readings', address: 'A2' });
    const { records } = await gatherRecords(workbook, { ...wishes, otherSheet: '' });
    expect(records[0]!.crimps.map(({ die, dial }) => [die, dial])).toEqual([
      ['', ''],
      ['', ''],
      ['', ''],
      ['', ''],
    ]);
  });

  it('judges with the uncertainty that is given', async () => {
    const fields = { ...FRESH_FIELDS, uncertainty: '0.03' };
    const { records } = await gatherRecords(bookAt('Readings', 'A2'), { ...wishes, fields });
    // 0.09 of 0.10 allowed, known to ± 0.03: ISO 14253-1.
    expect(records[0]!.crimps[2]!.verdict).toBe('UNSURE');
  });

  it('judges with the uncertainty that stands above the readings, and says which, where the user gives none', async () => {
    const book = { Readings: [['Expanded uncertainty of the mean (mm)', 0.03], [], ...recordSheets.Readings!] };
    const { workbook } = fakeWorkbook(book, { sheet: 'Readings', address: 'A4' });
    const stated = await gatherRecords(workbook, { ...wishes, otherSheet: '' });
    expect([stated.records[0]!.crimps[2]!.verdict, stated.uncertainty]).toEqual(['UNSURE', '0.03']);
    const fields = { ...FRESH_FIELDS, uncertainty: '0.005' };
    const own = await gatherRecords(workbook, { ...wishes, fields, otherSheet: '' });
    expect([own.records[0]!.crimps[2]!.verdict, own.uncertainty]).toEqual(['IN SPEC', '0.005']);
  });

  it('takes the pressure of the weakest part from the catalogue, where hose and both couplings are named', async () => {
    const parts = registerSheets(gate);
    const rated = (sheet: string, values: readonly number[]) =>
      parts[sheet]!.map((row, index) => [...row, index === 0 ? 'Working pressure (bar)' : values[index - 1]!]);
    // The elbow is the weakest: 250 bar, of hose 275 and cone 400.
    const sheets = { ...parts, Fittings: rated('Fittings', [400, 250]), Readings: recordSheets.Readings! };
    const formula = '=HOSE.CATALOGUE(Hoses!A1:D9, Fittings!A1:F9, Crimps!A1:F9)';
    const book = { ...sheets, Catalogue: [[{ formula, value: 'CAT-1' }]] };
    const { workbook } = fakeWorkbook(book, { sheet: 'Readings', address: 'A2' });
    const { records } = await gatherRecords(workbook, { ...wishes, otherSheet: '' });
    expect(valueOf(proofFacts(records[0]!, options), 'Working pressure')).toBe('250 bar');
    // Line 2 names one end only: its other part may be weaker.
    expect(valueOf(proofFacts(records[1]!, options), 'Working pressure')).toBe('');
  });

  it('takes only the rows that are selected', async () => {
    const { records } = await gatherRecords(bookAt('Readings', 'A2:A3'), wishes);
    expect(records.map(({ crimps }) => crimps.length)).toEqual([2]);
  });

  it('of job lines: readings come from the other sheet, lines without any get rows to write on', async () => {
    const { records } = await gatherRecords(bookAt('Jobs', 'A2'), { ...wishes, otherSheet: 'Readings' });
    expect(records.map(({ title, order, crimps }) => [title, order, crimps.length])).toEqual([
      ['Line 1', 'B-41', 4],
      ['Line 3', 'B-42', 2],
    ]);
    expect(records[1]!.crimps[1]).toMatchObject({ piece: '1', end: 'B', fitting: 'Rowan flange', mean: undefined });
  });

  it('says what to select where there is nothing', async () => {
    const { workbook } = fakeWorkbook({ Words: [['only words']] }, { sheet: 'Words', address: 'A1' });
    await expect(gatherRecords(workbook, { ...wishes, otherSheet: '' })).rejects.toThrow(/Select rows with readings/);
  });
});

describe('the printed page', () => {
  it('has one page a line, names escaped, boxes to tick and lines to sign', async () => {
    const { records } = await gatherRecords(bookAt('Readings', 'A2'), wishes);
    const html = recordPage(records, options);
    expect(html.match(/<article/g)).toHaveLength(2);
    expect(html).toContain('Topper &lt;lift&gt;');
    expect(html).toContain('LOOSE: rejected');
    expect(html.match(/class="tick"/g)).toHaveLength(12);
    // What is rejected has no line to release it on; the other record has.
    expect(html).toContain('REJECTED, not to be released: piece 1, end B LOOSE.');
    expect(html.match(/<small>Released</g)).toHaveLength(1);
    expect(html).toContain('Signature, tested');
    // Test, signatures and cautions move to the next page together, never a line of them alone.
    expect(html).toMatch(/<section class="proof">[\s\S]*Signature, tested[\s\S]*<\/footer><\/section>/);
    expect(html).toMatch(/\.proof \{ break-inside: avoid; \}/);
    expect(html).not.toMatch(/<script|https?:/);
    expect(recordPage(records, { ...options, result: { leak: 'none', slip: 'none', twist: '' } })).toContain('<b>Leak: none</b>');
  });
});

/** Two crimps of six readings each, both ends with one coupling. */
const sixReadings = {
  Readings: [
    ['Line', 'Hose', 'Coupling', 'End', '#1', '#2', '#3', '#4', '#5', '#6', 'Target (mm)', 'Tolerance (mm)'],
    [9, 'Larch DN 12', 'Larch cone', 'A', 25.01, 25.02, 25.03, 25.04, 25.05, 25.06, 25, 0.1],
    [9, 'Larch DN 12', 'Larch cone', 'B', 25, 25, 25, 25, 25, 25.01, 25, 0.1],
  ],
};

describe('more than four readings a crimp', () => {
  it('stand all in the records sheet, which gets the columns that it lacks', async () => {
    const book = { Inspection: recordSheets.Readings!, ...sixReadings };
    const { workbook } = fakeWorkbook(book, { sheet: 'Inspection', address: 'A2:A3' });
    const four = await gatherRecords(workbook, { ...wishes, otherSheet: '' });
    await workbook.write((await recordGrowth(workbook, four.records, options)).appended!.changes);
    await workbook.select({ sheet: 'Readings', address: 'A2' });
    const six = await gatherRecords(workbook, { ...wishes, otherSheet: '' });
    await workbook.write((await recordGrowth(workbook, six.records, options)).appended!.changes);
    const { values } = (await workbook.used('Inspection records'))!;
    const cells = (row: number) =>
      Array.from({ length: 6 }, (_, index) => values[row]![values[0]!.indexOf(`Reading ${index + 1}`)]);
    expect(cells(1)).toEqual([25.02, 25.01, 24.99, 25, '', '']);
    expect(cells(3)).toEqual([25.01, 25.02, 25.03, 25.04, 25.05, 25.06]);
    // Neither is written twice, whether it has four readings or six.
    expect((await recordGrowth(workbook, [...four.records, ...six.records], options)).standing).toBe(4);
    const last = six.records[0]!.crimps[0]!;
    const changed = { ...last, readings: [...last.readings.slice(0, 5), last.readings[0]] };
    expect((await recordGrowth(workbook, [{ ...six.records[0]!, crimps: [changed] }], options)).added).toBe(1);
  });

  it('are printed with the mean of all, and one coupling for all ends takes no column', async () => {
    const { workbook } = fakeWorkbook(sixReadings, { sheet: 'Readings', address: 'A2' });
    const { records } = await gatherRecords(workbook, { ...wishes, otherSheet: '' });
    const html = recordPage(records, options);
    expect(html).toContain('<th>6</th><th>mean</th><th>target</th>');
    expect(html).toContain('25.035');
    expect(html).not.toContain('<th>coupling</th>');
    expect(html).toContain('<dt>Coupling, all ends</dt><dd>Larch cone</dd>');
    const written = recordSheet('Inspection record', records, options).find(change => change.kind === 'values')!;
    const heading = written.values.find(row => row[0] === 'piece')!;
    expect(heading.slice(4)).toEqual(['dial', 1, 2, 3, 4, 5, 6, 'mean', 'target', 'limits', 'spread', 'verdict']);
  });
});

it('limits with more decimals than a record shows are rounded inwards: what they let pass is in tolerance', async () => {
  const { records } = await gatherRecords(bookAt('Readings', 'A2'), wishes);
  const crimp = { ...records[0]!.crimps[0]!, smallest: new Decimal('24.83641'), largest: new Decimal('25.16359') };
  expect(recordedLimits(crimp)).toBe('24.8365 … 25.1635');
});

describe('sheets', () => {
  it('prints a line a page from a sheet of its own', async () => {
    const { records } = await gatherRecords(bookAt('Readings', 'A2'), wishes);
    const changes: readonly Change[] = recordSheet('Inspection record', records, options);
    const page = changes.find(change => change.kind === 'page')!;
    const written = changes.find(change => change.kind === 'values')!;
    const second = written.values.findIndex(row => row[0] === 'Inspection record: Line 2');
    expect(page.page.breaksBefore).toEqual([second + 1]);
    expect(written.values.flat()).toEqual(
      expect.arrayContaining(['B-41', '25.005', '24.9 … 25.1', 'LOOSE: rejected', '550 bar']),
    );
  });

  it('keeps a row a crimp as data, and writes none twice', async () => {
    const { workbook } = fakeWorkbook(recordSheets, { sheet: 'Readings', address: 'A2:A3' });
    const { records } = await gatherRecords(workbook, wishes);
    const first = await recordGrowth(workbook, records, options);
    expect([first.added, first.standing]).toEqual([2, 0]);
    await workbook.write(first.appended!.changes);
    const standing = (await workbook.used('Inspection records'))!.values;
    const row = Object.fromEntries(standing[0]!.map((heading, column) => [heading, standing[2]![column]]));
    expect(row).toMatchObject({
      Line: '1',
      Order: 'B-41',
      Piece: '1',
      End: 'B',
      'Reading 1': 25.21,
      Mean: 25.21,
      Verdict: 'LOOSE',
      'Proof pressure': 550,
      Leak: '',
    });
    const all = await gatherRecords(await selectAll(workbook), wishes);
    const again = await recordGrowth(workbook, all.records, options);
    expect([again.added, again.standing]).toEqual([3, 2]);
    expect(again.appended!.row).toBe(4);
  });
});

async function selectAll(workbook: ReturnType<typeof fakeWorkbook>['workbook']) {
  await workbook.select({ sheet: 'Readings', address: 'A2:A6' });
  return workbook;
}
