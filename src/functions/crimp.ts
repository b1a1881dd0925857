import { calibrationTurns as calibrationTurnsOf } from '../core/crimp/calibrationTurns';
import { conformity as conformityOf } from '../core/crimp/conformity';
import { measureCrimp } from '../core/crimp/crimpMeasure';
import { judgeCrimp } from '../core/crimp/crimpVerdict';
import { nextDial as nextDialOf } from '../core/crimp/nextDial';
import { answer } from '../cells/answer';
import { column, readingBlock } from '../cells/columns';
import { readDiameter, readTolerance } from '../cells/crimpReaders';
import { number } from '../cells/readers';
import { mapRows } from '../cells/rows';
import { optionalSingle, single } from '../cells/singles';
import { dialLimits } from './dialLimits';

const readUncertainty = number({ sign: 'notNegative', mayBeDate: true, hint: 'enter the expanded uncertainty U (k = 2)' });
const readSpread = number({ sign: 'notNegative', mayBeDate: true, hint: 'enter the largest spread allowed' });

/**
 * Judges crimps by the mean of their caliper readings: IN SPEC, TIGHT, LOOSE, and on request UNSURE or OVAL.
 * @customfunction CRIMPCHECK CRIMPCHECK
 * @param {any[][]} readings Caliper readings, one crimp a row, two or more side by side; across flats at mid crimp length, evenly round (one unit for all diameters, mm or in).
 * @param {any[][]} target Specified crimp diameter: one value or a column (same unit).
 * @param {any[][]} tolerance Allowed deviation of the mean, either way: one value or a column (same unit).
 * @param {any[][]} [uncertainty] Expanded uncertainty U (k = 2) of the mean, one value: a limit nearer to the mean than this gives UNSURE (same unit; blank = not asked).
 * @param {any[][]} [maxSpread] Largest spread of the readings, one value: a mean in spec with more spread gives OVAL (same unit; blank = not asked).
 * @returns {any[][]} One verdict a row: IN SPEC, TIGHT (mean below the band), LOOSE (above it), UNSURE or OVAL; blank where no reading is filled in. #VALUE! names the reading that is missing or cannot be: outside 0.8 … 1.25 of the target, or more than 10 tolerances and 2 % of the target from the crimp's median.
 * Source: common practice (mean of four readings); guard band ISO 14253-1, ILAC-G8.
 * @example =HOSE.CRIMPCHECK({27.4,27.5,27.5,27.6}, 27.5, 0.1) gives IN SPEC
 */
export function crimpCheck(
  readings: any[][],
  target: any[][],
  tolerance: any[][],
  uncertainty?: any[][],
  maxSpread?: any[][],
): any[][] {
  return answer(() => {
    const expanded = optionalSingle('uncertainty', uncertainty, readUncertainty);
    const spread = optionalSingle('largest spread', maxSpread, readSpread);
    return mapRows(
      [readingBlock('readings', readings), column('target', target, readDiameter), column('tolerance', tolerance, readTolerance)],
      1,
      (crimp, diameter, allowed) => {
        const measure = measureCrimp({ readings: crimp, target: diameter, tolerance: allowed });
        return judgeCrimp(measure, { tolerance: allowed, uncertainty: expanded, maxSpread: spread });
      },
    );
  });
}

/**
 * Mean, deviation, spread and verdict of crimps.
 * @customfunction CRIMPDETAIL CRIMPDETAIL
 * @param {any[][]} readings Caliper readings, one crimp a row, two or more side by side (one unit for all diameters, mm or in).
 * @param {any[][]} target Specified crimp diameter: one value or a column (same unit).
 * @param {any[][]} tolerance Allowed deviation of the mean, either way: one value or a column (same unit).
 * @param {any[][]} [maxSpread] Largest spread of the readings, one value: a mean in spec with more spread gives OVAL (same unit; blank = not asked).
 * @returns {any[][]} Four columns: mean, deviation (mean - target), spread (largest - smallest), all in the same unit, and the verdict. Errors as CRIMPCHECK.
 * Source: common practice (mean of four readings).
 * @example =HOSE.CRIMPDETAIL({27.4,27.5,27.5,27.6}, 27.5, 0.1) gives 27.5, 0, 0.2 and IN SPEC
 */
export function crimpDetail(readings: any[][], target: any[][], tolerance: any[][], maxSpread?: any[][]): any[][] {
  return answer(() => {
    const largest = optionalSingle('largest spread', maxSpread, readSpread);
    return mapRows(
      [readingBlock('readings', readings), column('target', target, readDiameter), column('tolerance', tolerance, readTolerance)],
      4,
      (crimp, diameter, allowed) => {
        const measure = measureCrimp({ readings: crimp, target: diameter, tolerance: allowed });
        const { mean, deviation, spread } = measure;
        return [mean, deviation, spread, judgeCrimp(measure, { tolerance: allowed, maxSpread: largest })];
      },
    );
  });
}

/**
 * Probability that the true crimp diameter lies within its tolerance, given the measured mean.
 * @customfunction CONFORMITY CONFORMITY
 * @param {any[][]} mean Measured mean diameter: one value or a column (one unit for all diameters, mm or in).
 * @param {any[][]} target Specified crimp diameter: one value or a column (same unit).
 * @param {any[][]} tolerance Allowed deviation, either way: one value or a column (same unit).
 * @param {any[][]} uncertainty Expanded uncertainty U (k = 2) of the mean, one value above 0 (same unit).
 * @returns {any[][]} Probability from 0 to 1, one a row. #VALUE! names the argument that is missing or cannot be read.
 * Source: JCGM 106:2012, normal distribution with standard uncertainty U/2.
 * @example =HOSE.CONFORMITY(9.8, 9.5, 0.5, 0.2) gives 0.97725
 */
export function conformity(mean: any[][], target: any[][], tolerance: any[][], uncertainty: any[][]): any[][] {
  return answer(() => {
    const expanded = single(
      'uncertainty',
      uncertainty,
      number({ sign: 'positive', mayBeDate: true, hint: 'enter the expanded uncertainty U (k = 2)' }),
    );
    return mapRows(
      [column('mean', mean, readDiameter), column('target', target, readDiameter), column('tolerance', tolerance, readTolerance)],
      1,
      (measured, diameter, allowed) =>
        conformityOf({ mean: measured, target: diameter, tolerance: allowed, uncertainty: expanded }),
    );
  });
}

/**
 * Dial setting for the next crimp, to be tried on one trial piece first; the crimp that was measured stays rejected where it is out of spec.
 * @customfunction NEXTDIAL NEXTDIAL
 * @param {any[][]} dial Dial setting the crimp was made at, in digits: one value or a column.
 * @param {any[][]} readings Caliper readings of that crimp, one crimp a row, two or more side by side (one unit for all diameters, mm or in).
 * @param {any[][]} target Specified crimp diameter: one value or a column (same unit).
 * @param {any[][]} tolerance Allowed deviation of the mean, either way: one value or a column (same unit).
 * @param {any[][]} step Change of diameter per digit: one value or a column; positive where a higher number crimps tighter, negative where looser (same unit).
 * @param {any[][]} [lowest] Lowest setting of the dial, in digits, one value (blank = no limit).
 * @param {any[][]} [highest] Highest setting of the dial, in digits, one value (blank = no limit).
 * @param {any[][]} [largestMove] Most digits in one move, one value (blank = no limit).
 * @returns {any[][]} Dial setting, in digits, one a row: the same in spec, else corrected to the nearest digit. #VALUE! where a reading cannot be (see CRIMPCHECK), one digit is too coarse for the tolerance, the dial would leave its range or the move is too large: look at die, hose, ferrule and readings first.
 * Source: common practice of the trade.
 * @example =HOSE.NEXTDIAL(412, {27.7,27.7,27.8,27.8}, 27.5, 0.1, 0.05) gives 417
 */
export function nextDial(
  dial: any[][],
  readings: any[][],
  target: any[][],
  tolerance: any[][],
  step: any[][],
  lowest?: any[][],
  highest?: any[][],
  largestMove?: any[][],
): any[][] {
  return answer(() => {
    const limits = dialLimits(lowest, highest, largestMove);
    return mapRows(
      [
        column('dial', dial, number({ marks: 'noLength', hint: 'enter the dial setting', like: '412' })),
        readingBlock('readings', readings),
        column('target', target, readDiameter),
        column('tolerance', tolerance, readTolerance),
        column('step', step, number({ mayBeDate: true, zeroIsBlank: true, hint: 'enter the change of diameter per digit' })),
      ],
      1,
      (setting, crimp, diameter, allowed, perDigit) => {
        const measure = measureCrimp({ readings: crimp, target: diameter, tolerance: allowed });
        return nextDialOf(measure, allowed, { dial: setting, step: perDigit, ...limits });
      },
    );
  });
}

/**
 * Turns of the machine's calibration screw that take out a deviation which is the same over all combinations.
 * @customfunction CALIBRATIONTURNS CALIBRATIONTURNS
 * @param {any[][]} deviation Machine's deviation (mean - target): one value or a column (mm or in).
 * @param {any[][]} perTurn Change of crimp diameter in one turn of the screw, above 0: one value or a column (same unit).
 * @returns {any[][]} Turns, one a row, positive = crimp tighter. #VALUE! names the argument that is missing or cannot be read.
 * Source: common practice of the trade.
 * @example =HOSE.CALIBRATIONTURNS(0.09, 0.6) gives 0.15
 */
export function calibrationTurns(deviation: any[][], perTurn: any[][]): any[][] {
  return answer(() =>
    mapRows(
      [
        column('deviation', deviation, number({ mayBeDate: true, hint: 'enter the deviation' })),
        column(
          'change per turn',
          perTurn,
          number({ sign: 'positive', mayBeDate: true, zeroIsBlank: true, hint: 'enter the change of diameter per turn' }),
        ),
      ],
      1,
      calibrationTurnsOf,
    ),
  );
}
