import { loadedFunctions, timed } from './loadedFunctions';
import { seededUniform } from './seededUniform';

/*
 * Processor time of row-wise functions of dist/functions.js, beside a loop in plain floating point over the same cells. FUNCTIONS=file takes
 * another build, so that two can be compared.
 */

const found = loadedFunctions();

const uniform = seededUniform(20261130);
const hundredths = (value: number) => Math.round(value * 100) / 100;
const column = (rows: number, cell: () => unknown) => Array.from({ length: rows }, () => [cell()]);

function bareVerdicts(readings: readonly number[][], target: number, tolerance: number): string[][] {
  return readings.map(crimp => {
    const off = crimp.reduce((sum, reading) => sum + reading, 0) / crimp.length - target;
    return [Math.abs(off) <= tolerance ? 'IN SPEC' : off < 0 ? 'TIGHT' : 'LOOSE'];
  });
}

function callsOf(rows: number): Record<string, () => unknown> {
  const call = (id: string, ...args: unknown[]) => found.get(id)!(...args, {});
  const crimps = Array.from({ length: rows }, () => {
    const mean = 27.5 + (uniform() - 0.5) * 0.3;
    return Array.from({ length: 4 }, () => hundredths(mean + (uniform() - 0.5) * 0.1));
  });
  const [target, tolerance] = [[[27.5]], [[0.1]]];
  const texts = crimps.map(crimp => crimp.map(reading => String(reading).replace('.', ',')));
  const computed = crimps.map(crimp => crimp.map(reading => reading * 1.1 - reading * 0.1));
  const refused = crimps.map(crimp => [...crimp.slice(1), 'x']);
  const overall = column(rows, () => hundredths(500 + uniform() * 2000));
  const cutOff = () => column(rows, () => hundredths(20 + uniform() * 40));
  const [a, b, allowance, dials] = [cutOff(), cutOff(), column(rows, () => hundredths(uniform() * 5)), column(rows, () => 412)];
  return {
    'bare loop': () => bareVerdicts(crimps, 27.5, 0.1),
    CRIMPCHECK: () => call('CRIMPCHECK', crimps, target, tolerance, null, null),
    CRIMPDETAIL: () => call('CRIMPDETAIL', crimps, target, tolerance, null),
    NEXTDIAL: () => call('NEXTDIAL', dials, crimps, target, tolerance, [[0.02]], null, null, null),
    CUTLENGTH: () => call('CUTLENGTH', overall, a, b, allowance),
    'CRIMPCHECK, three readings': () =>
      call(
        'CRIMPCHECK',
        crimps.map(crimp => crimp.slice(1)),
        target,
        tolerance,
        null,
        null,
      ),
    'CRIMPCHECK, readings as text': () => call('CRIMPCHECK', texts, target, tolerance, null, null),
    'CRIMPCHECK, computed readings': () => call('CRIMPCHECK', computed, target, tolerance, null, null),
    'CRIMPCHECK, an error in every row': () => call('CRIMPCHECK', refused, target, tolerance, null, null),
  };
}

console.log('| function | rows | first call | usual call | × bare loop |\n| --- | --- | --- | --- | --- |');
for (const rows of [1000, 10_000, 100_000]) {
  let bare = 0;
  for (const [name, call] of Object.entries(callsOf(rows))) {
    const [first, usual] = timed(call);
    bare ||= usual;
    console.log(`| ${name} | ${rows} | ${first.toFixed(3)} s | ${usual.toFixed(3)} s | ${(usual / bare).toFixed(1)} |`);
  }
}
