import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook } from 'exceljs';

const folder = join(__dirname, '../../samples');

interface PlantedWeek {
  readonly sheet: string;
  readonly machine: number;
  readonly settings: Record<string, number>;
  readonly finding: string;
}

const truth = JSON.parse(readFileSync(join(folder, 'measurement-book.json'), 'utf8')) as { weeks: PlantedWeek[] };

type Finding = readonly [combination: string, crimps: number, meanDeviation: number, correction: number, finding: string];

async function findingsOf(sheetName: string): Promise<Finding[]> {
  const workbook = new Workbook();
  await workbook.xlsx.readFile(join(folder, 'measurement-book.xlsx'));
  const sheet = workbook.getWorksheet(sheetName)!;
  const rows: Finding[] = [];
  for (let row = 8; sheet.getCell(row, 16).value; row++) {
    rows.push([16, 17, 18, 19, 20].map(column => sheet.getCell(row, column).value) as unknown as Finding);
  }
  return rows;
}

describe.each(truth.weeks)('$sheet', ({ sheet, machine, settings, finding }) => {
  test(`the finding is what was planted: ${finding}`, async () => {
    expect((await findingsOf(sheet))[0]!.slice(0, 1).concat((await findingsOf(sheet))[0]![4])).toEqual(['All', finding]);
  });

  test('the combinations with a planted setting are found, and no other', async () => {
    const own = (await findingsOf(sheet)).filter(row => row[4] === 'OWN SETTING').map(([name]) => name);
    expect(own).toEqual(finding === 'NOT ENOUGH DATA' ? [] : Object.keys(settings));
  });

  // Standard error of a combination's mean: scatter of crimps and readings, 0.0214 mm, over the root of 6 crimps; 0.03 mm is over three of them.
  test('corrections undo what was planted, as far as six crimps can tell', async () => {
    for (const [name, , , correction] of await findingsOf(sheet)) {
      const planted = name === 'All' ? machine : (settings[name] ?? 0);
      const wanted = finding === 'NOT ENOUGH DATA' || planted === 0 ? 0 : -planted;
      expect(Math.abs(correction - wanted)).toBeLessThan(wanted === 0 ? 1e-12 : 0.03);
    }
  });
});
