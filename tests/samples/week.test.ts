import { solveCutPlan } from '../../src/core/cutplan/solveCutPlan';
import { Decimal } from '../../src/core/units/decimal';
import { stopsOf } from '../../src/sheets/benchcard/benchSteps';
import { gatherCards } from '../../src/sheets/jobs/gatherCards';
import { gatherCuts } from '../../src/sheets/cutlist/gatherCuts';
import { rackSheets } from '../../src/sheets/rack/rack';
import { planHoses } from '../../src/sheets/cutlist/planHoses';
import { tagProblems, tagsOf } from '../../src/sheets/tags/tag';
import { openSample } from './openSample';

const settings = {
  unit: 'mm',
  step: new Decimal(1),
  kerf: new Decimal(3),
  squaring: new Decimal(20),
  keep: new Decimal(500),
  ageLimitMonths: 72,
  isOldestFirst: false,
} as const;
const wishes = { unit: 'mm', step: new Decimal(1), pressureUnit: 'bar', machine: '' } as const;

describe('the week of the sample catalogue', () => {
  test('every hose gets a plan from the rack, and only the old end is left out of it', async () => {
    const workbook = await openSample('catalogue.xlsx', { sheet: 'Week', address: 'A6' });
    expect(await rackSheets(workbook)).toEqual(['Rack']);
    const gathered = await gatherCuts(workbook, 'Rack', settings, '2026-10-05');
    expect([gathered.report.leftOut, gathered.rack.report.leftOut]).toEqual([[], []]);
    expect([gathered.read.questions, gathered.rack.questions]).toEqual([[], []]);
    const plans = await planHoses(gathered, solveCutPlan, () => {}, { aborted: false });
    expect(plans.map(({ job, totals, shortage }) => [job.hose, totals !== undefined, shortage])).toEqual(
      ['Larch DN 12', 'Larch DN 10', 'Larch DN 16', 'Rowan DN 19', 'Alder DN 16', 'Larch DN 19'].map(hose =>
        // One of its two pieces fits the rack: it is planned, the other waits.
        hose === 'Rowan DN 19' ? [hose, true, 'sure'] : [hose, true, undefined],
      ),
    );
    expect(plans[3]!.later.map(({ quantity }) => quantity)).toEqual([1]);
    expect(plans[3]!.buy).toMatchObject({ reels: 1, atLeast: 1 });
    // The old end is left out, and told.
    expect(plans.flatMap(({ job }) => job.warnings)).toEqual([]);
    expect(gathered.tooOld.map(({ lot, made }) => [lot, made])).toEqual([['67/19', '2019-08-01']]);
  });

  test('every line gets a card without a stop, and every assembly a tag', async () => {
    const workbook = await openSample('catalogue.xlsx', { sheet: 'Week', address: 'A6' });
    const { cards, source } = await gatherCards(workbook, wishes);
    expect(cards.map(stopsOf)).toEqual(Array.from({ length: 8 }, () => []));
    expect(cards.flatMap(({ ends }) => ends.map(end => end.die))).toEqual(
      Array.from({ length: 16 }, () => expect.stringMatching(/^D\d/)),
    );
    expect(source).toMatch(/^sheet Week, CAT-/);
    const options = { maker: 'Beet workshop (invented)', prefix: '', today: '2026-10-05' };
    const tags = tagsOf(cards, options);
    expect(tagProblems(cards, tags, options)).toEqual([]);
    expect(tags.map(tag => tag.number).slice(0, 3)).toEqual(['W41-01-1', 'W41-01-2', 'W41-02-1']);
    expect(tags).toHaveLength(25);
  });
});

test('the job sheet has a rack for its lines in millimetres', async () => {
  const workbook = await openSample('job-sheet.xlsx', { sheet: 'Jobs (mm)', address: 'A6' });
  const { jobs, report, rack } = await gatherCuts(workbook, 'Rack', settings, '2026-10-05');
  expect(rack.problems).toEqual([]);
  // The last line is not measured yet.
  expect(report.leftOut.map(({ reason }) => reason)).toEqual(['stop']);
  expect(jobs.filter(job => job.rack.length === 0).map(job => job.hose)).toEqual([]);
});
