import { capability as capabilityOf } from '../core/quality/capability';
import { controlLimits as controlLimitsOf } from '../core/quality/controlLimits';
import { dialResponse as dialResponseOf } from '../core/quality/dialResponse';
import { runSignals as runSignalsOf } from '../core/quality/runSignals';
import { Decimal } from '../core/units/decimal';
import { answer, table } from '../cells/answer';
import { column } from '../cells/columns';
import { listRows } from '../cells/lists';
import { number } from '../cells/readers';
import { mapRows } from '../cells/rows';
import { optionalSingle, single } from '../cells/singles';
import { gatherByName, readName } from './combinationList';
import { refuseBlankLimit, subgroupsOf } from './subgroups';

const readLimit = number({ mayBeDate: true, hint: 'enter the limit' });

/** A 0 so many sigma away from the centre line is no point of the chart but a blank that the host turned into 0. */
const BLANK_BEYOND = 20;

/**
 * How much tighter one digit of the dial crimps, from crimps at different settings: one slope for all combinations, each at a level of its own.
 * @customfunction DIALRESPONSE DIALRESPONSE
 * @param {any[][]} combination Name of the combination (hose and fitting), a column, one crimp a row; all of one machine.
 * @param {any[][]} dial Dial setting of the crimp, a column, in digits.
 * @param {any[][]} mean Mean diameter of the crimp, a column (mm or in).
 * @returns {any[][]} One row: tightening per digit (the step of NEXTDIAL, positive where a higher number crimps tighter), low, high (95 % limits, blank with too few crimps), all in the unit of the mean, and the crimps used. #VALUE! where no dial changes within a combination.
 * Source: analysis of covariance with parallel lines.
 * @example =HOSE.DIALRESPONSE({"Alder";"Alder";"Alder"}, {10;20;30}, {20.2;20.1;20}) gives 0.01, 0.01, 0.01, 3
 */
export function dialResponse(combination: any[][], dial: any[][], mean: any[][]): any[][] {
  return answer(() => {
    const crimps = listRows(
      [
        column('combination', combination, readName),
        column('dial', dial, number({ marks: 'noLength', hint: 'enter the dial setting', like: '412' })),
        column('mean', mean, number({ sign: 'positive', mayBeDate: true, zeroIsBlank: true, hint: 'enter the mean diameter' })),
      ],
      [],
    );
    const groups = gatherByName(
      crimps.map(([name, digits, diameter]) => [name, { dial: digits.toNumber(), mean: diameter.toNumber() }] as const),
    );
    const { perDigit, low, high, crimps: used } = dialResponseOf(groups.map(({ items }) => items));
    return table([[perDigit, low, high, used]]);
  });
}

/**
 * Control limits from subgroups of crimps: mean and range charts, or individual and moving range charts for a single column.
 * @customfunction CONTROLLIMITS CONTROLLIMITS
 * @param {any[][]} subgroups Measured values in the order they were made, one subgroup of 1 to 10 values a row (one unit, mm or in).
 * @returns {any[][]} Table with heading: Chart, Lower, Centre, Upper (3 sigma, same unit); rows Mean and Range, or Individual and Moving range. #VALUE! with fewer than two subgroups or an unfinished row.
 * Source: ISO 7870-2; NIST/SEMATECH e-Handbook 6.3.2.
 * @example =HOSE.CONTROLLIMITS({10,12;11,13}) gives Chart, Lower, Centre, Upper, Mean, 7.74, 11.5, 15.26
 */
export function controlLimits(subgroups: any[][]): any[][] {
  return answer(() =>
    table([
      ['Chart', 'Lower', 'Centre', 'Upper'],
      ...controlLimitsOf(subgroupsOf(subgroups)).map(({ chart, lower, centre, upper }) => [chart, lower, centre, upper]),
    ]),
  );
}

/**
 * The Western Electric rules that each point of a control chart completes: 1 one beyond 3 sigma; 2 two of three beyond 2; 3 four of five beyond 1; 4 eight on one side.
 * @customfunction RUNSIGNALS RUNSIGNALS
 * @param {any[][]} values Points in the order they were made: a column (one unit with centre and sigma, mm or in). Blank rows and rows with an error are no points: runs go on across them; so is a 0 that lies more than 20 sigma from the centre line (a blank that the host turned into 0).
 * @param {any[][]} centre Centre line, one value (same unit).
 * @param {any[][]} sigma Standard deviation of the points, one value above 0 (same unit).
 * @returns {any[][]} The rules a point completes as text, such as 1 or 2 4, one a row; blank where it completes none.
 * Source: Western Electric, Statistical Quality Control Handbook (1956); NIST/SEMATECH e-Handbook 6.3.2.
 * @example =HOSE.RUNSIGNALS({10.5;10.7}, 10, 0.2) gives , 1 2
 */
export function runSignals(values: any[][], centre: any[][], sigma: any[][]): any[][] {
  return answer(() => {
    const line = single('centre', centre, number({ hint: 'enter the centre line' }));
    const width = single('sigma', sigma, number({ sign: 'positive', zeroIsBlank: true, hint: 'enter the standard deviation' }));
    const points: Decimal[] = [];
    const read = number({ hint: 'enter the value of the point' });
    const zeroIsBlank = line.abs().gt(width.times(BLANK_BEYOND));
    const places = mapRows([column('values', values, read)], 1, value =>
      zeroIsBlank && value.isZero() ? '' : points.push(value) - 1,
    );
    const signals = runSignalsOf(points, line, width);
    return places.map(([place]) => [typeof place === 'number' ? signals[place]!.join(' ') : place]);
  });
}

/**
 * Capability of a process: how well its values fit between limits.
 * @customfunction CAPABILITY CAPABILITY
 * @param {any[][]} subgroups Measured values in the order they were made, one subgroup a row, or a single column (one unit, mm or in).
 * @param {any[][]} lower Lower limit, one value (same unit; blank = none, then give the upper).
 * @param {any[][]} upper Upper limit, one value (same unit; blank = none, then give the lower).
 * @param {any[][]} [target] Value aimed at, one value between the limits, for Cpm (same unit; blank = not asked).
 * @returns {any[][]} Table with heading: Index, Value, Low, High (95 % limits where they exist); rows Cp, Cpk (pooled scatter within subgroups; of a single column moving ranges), Cpm, Pp, Ppk (scatter of all values). #VALUE! where limits are missing or crossed or the values do not differ.
 * Source: NIST/SEMATECH e-Handbook 6.1.6.
 * @example =HOSE.CAPABILITY({14,18;14,18}, 8, 20) gives Index, Value, Low, High, Cp, 0.70711
 */
export function capability(subgroups: any[][], lower: any[][], upper: any[][], target?: any[][]): any[][] {
  return answer(() => {
    const rows = subgroupsOf(subgroups);
    const limits = {
      lower: optionalSingle('lower limit', lower, readLimit)?.toNumber(),
      upper: optionalSingle('upper limit', upper, readLimit)?.toNumber(),
    };
    refuseBlankLimit(rows.flat(), limits);
    const indices = capabilityOf({
      subgroups: rows,
      ...limits,
      target: optionalSingle('target', target, number({ mayBeDate: true, hint: 'enter the target' }))?.toNumber(),
    });
    return table([['Index', 'Value', 'Low', 'High'], ...indices.map(({ index, value, low, high }) => [index, value, low, high])]);
  });
}
