// How often the cause of wrong crimps is found, against the plain rule "average everything and adjust the machine".
import { crimpCause } from '../src/core/quality/crimpCause';
import { Decimal } from '../src/core/units/decimal';
import { simulatedWeeks, type Planted, type SimulatedWeek, type WeekKind } from './simulatedWeeks';

const WEEKS = 2000;
const SEED = 20240611;
const ACTION_SHARE = 0.5;

/** What is changed: the machine by a correction, combinations (by name) by their own. Nothing is said where there are too few data. */
interface Advice {
  readonly machine: number;
  readonly own: ReadonlyMap<string, number>;
  readonly undecided: boolean;
}

function byCause({ combinations }: SimulatedWeek): Advice {
  const cause = crimpCause({
    groups: combinations,
    tolerance: new Decimal(1),
    confidence: 0.95,
    actionShare: new Decimal(ACTION_SHARE),
  });
  const own = cause.combinations.filter(({ finding }) => finding === 'OWN SETTING');
  return {
    machine: cause.correction.toNumber(),
    own: new Map(own.map(({ name, correction }) => [name, correction.toNumber()])),
    undecided: cause.finding === 'NOT ENOUGH DATA',
  };
}

function byAverage({ combinations }: SimulatedWeek): Advice {
  const all = combinations.flatMap(({ deviations }) => deviations);
  const mean = Decimal.sum(...all)
    .div(all.length)
    .toNumber();
  return { machine: Math.abs(mean) >= ACTION_SHARE ? -mean : 0, own: new Map(), undecided: false };
}

/** How an advice compares with what was planted. */
function judge(week: SimulatedWeek, advice: Advice) {
  const machineOff = week.planted.startsWith('machine');
  const wrong = week.combinations.filter(({ settingOff }) => settingOff);
  const innocent = week.combinations.filter(({ settingOff }) => !settingOff);
  const machineTouched = advice.machine !== 0;
  const found = wrong.filter(({ name }) => advice.own.has(name)).length;
  const condemned = innocent.filter(({ name }) => advice.own.has(name)).length;
  const left = week.combinations.map(({ name, own }) =>
    Math.abs(week.machine + own + advice.machine + (advice.own.get(name) ?? 0)),
  );
  return {
    right: machineTouched === machineOff && found === wrong.length && condemned === 0,
    undecided: advice.undecided,
    machineFalsely: machineTouched && !machineOff,
    settingFalsely: condemned > 0,
    stillOff: left.filter(deviation => deviation > ACTION_SHARE).length / left.length,
  };
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const HEADING = [
  'planted',
  'rule',
  'cause found, nothing else touched',
  'says it cannot tell',
  'machine adjusted for nothing',
  'a right setting changed',
  'combinations still off by more than half the tolerance',
];

function row(weeks: readonly SimulatedWeek[], planted: Planted, rule: string, advise: (week: SimulatedWeek) => Advice): string[] {
  const results = weeks.filter(week => week.planted === planted).map(week => judge(week, advise(week)));
  const share = (of: (result: (typeof results)[number]) => number | boolean) =>
    percent(results.reduce((total, result) => total + Number(of(result)), 0) / results.length);
  return [
    planted,
    rule,
    share(({ right }) => right),
    share(({ undecided }) => undecided),
    share(({ machineFalsely }) => machineFalsely),
    share(({ settingFalsely }) => settingFalsely),
    share(({ stillOff }) => stillOff),
  ];
}

function report(title: string, kind: WeekKind): void {
  const weeks = simulatedWeeks(WEEKS, SEED, kind);
  const rows = (['nothing', 'machine', 'setting', 'machine and setting'] as const).flatMap(planted => [
    row(weeks, planted, 'CRIMPCAUSE', byCause),
    row(weeks, planted, 'average everything', byAverage),
  ]);
  console.log(`\n${title}: ${WEEKS} weeks, seed ${SEED}\n`);
  for (const cells of [HEADING, HEADING.map(() => '---'), ...rows]) console.log(`| ${cells.join(' | ')} |`);
}

report('A week with enough crimps', { combinations: [4, 8], crimps: [3, 10], scatter: [0.15, 0.35], off: [0.7, 1.5] });
report('A thin week', { combinations: [3, 5], crimps: [2, 3], scatter: [0.2, 0.45], off: [0.6, 1.5] });
