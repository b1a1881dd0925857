import { cutLength as cutLengthOf } from '../core/length/cutLength';
import { lengthChange as lengthChangeOf, USUAL_LENGTH_CHANGE } from '../core/length/lengthChange';
import { LENGTH_RULES, lengthLimits as lengthLimitsOf, usualLengthRule } from '../core/length/lengthLimits';
import { overallLength as overallLengthOf } from '../core/length/overallLength';
import { routeLength as routeLengthOf } from '../core/length/routeLength';
import { answer, table } from '../cells/answer';
import { column } from '../cells/columns';
import { readDiameter } from '../cells/crimpReaders';
import { choice, number } from '../cells/readers';
import { mapRows } from '../cells/rows';
import { optionalSingle, single } from '../cells/singles';
import { bendList, couplingColumns, fraction, lengthColumn, numberList } from './lengthArguments';

/**
 * Length to cut the hose to: overall length less both couplings' cut-offs, plus an allowance.
 * @customfunction CUTLENGTH CUTLENGTH
 * @param {any[][]} overall Overall length of the assembly: one value or a column, in one unit with all other lengths (mm or in).
 * @param {any[][]} cutOffA Cut-off of coupling A, from the hose's cut end to the point the overall length is measured to, along the hose axis: one value or a column (same unit; may be negative).
 * @param {any[][]} cutOffB Cut-off of coupling B: one value or a column (same unit; may be negative).
 * @param {any[][]} [allowance] Added to the cut, positive = cut longer: one value or a column (same unit; blank = none).
 * @returns {any[][]} Cut length, one a row, in the same unit. #VALUE! names the argument that is missing or cannot be read.
 * Source: common practice of the trade.
 * @example =HOSE.CUTLENGTH(1200, 48.5, 52) gives 1099.5
 */
export function cutLength(overall: any[][], cutOffA: any[][], cutOffB: any[][], allowance?: any[][]): any[][] {
  return answer(() =>
    mapRows(
      [lengthColumn('overall length', overall), ...couplingColumns(cutOffA, cutOffB, allowance)],
      1,
      (length, a, b, extra) => cutLengthOf({ overall: length, cutOffA: a, cutOffB: b, allowance: extra }),
    ),
  );
}

/**
 * Overall length that a cut hose gives: the way back from CUTLENGTH.
 * @customfunction OVERALLLENGTH OVERALLLENGTH
 * @param {any[][]} cut Length the hose was cut to: one value or a column, in one unit with all other lengths (mm or in).
 * @param {any[][]} cutOffA Cut-off of coupling A: one value or a column (same unit; may be negative).
 * @param {any[][]} cutOffB Cut-off of coupling B: one value or a column (same unit; may be negative).
 * @param {any[][]} [allowance] What was added to the cut, positive = cut longer: one value or a column (same unit; blank = none).
 * @returns {any[][]} Overall length, one a row, in the same unit. #VALUE! names the argument that is missing or cannot be read.
 * Source: common practice of the trade.
 * @example =HOSE.OVERALLLENGTH(1099.5, 48.5, 52) gives 1200
 */
export function overallLength(cut: any[][], cutOffA: any[][], cutOffB: any[][], allowance?: any[][]): any[][] {
  return answer(() =>
    mapRows([lengthColumn('cut length', cut), ...couplingColumns(cutOffA, cutOffB, allowance)], 1, (length, a, b, extra) =>
      overallLengthOf({ cut: length, cutOffA: a, cutOffB: b, allowance: extra }),
    ),
  );
}

/**
 * Shortest and longest finished length of an assembly by a published rule.
 * @customfunction LENGTHLIMITS LENGTHLIMITS
 * @param {any[][]} overall Overall length of the assembly: one value or a column, in the unit named third.
 * @param {any[][]} bore Inside diameter of the hose: one value or a column, in the same unit.
 * @param {any[][]} unit Unit of all lengths: "mm" or "in".
 * @param {any[][]} [rule] "DIN 20066" (the usual one for mm) or "SAE J517" (the usual one for in).
 * @returns {any[][]} Two columns: shortest and longest finished length, in the same unit. #VALUE! where the rule has no band for the bore.
 * Source: DIN 20066 and SAE J517, recalled from memory: compare with your own copy.
 * @example =HOSE.LENGTHLIMITS(1000, 12.7, "mm") gives 996 and 1012
 */
export function lengthLimits(overall: any[][], bore: any[][], unit: any[][], rule?: any[][]): any[][] {
  return answer(() => {
    const lengthUnit = single('unit', unit, choice('mm', 'in'));
    const lengthRule = optionalSingle('rule', rule, choice(...LENGTH_RULES)) ?? usualLengthRule(lengthUnit);
    const read = (hint: string, mayBeDate: boolean) =>
      number({ sign: 'positive', mayBeDate, zeroIsBlank: true, hint, millimetres: lengthUnit === 'mm' });
    return mapRows(
      [column('overall length', overall, read('enter a length', false)), column('bore', bore, read('enter a diameter', true))],
      2,
      (length, diameter) => {
        const { shortest, longest } = lengthLimitsOf(length, diameter, lengthUnit, lengthRule);
        return [shortest, longest];
      },
    );
  });
}

/**
 * Shortest and longest length of a hose under pressure.
 * @customfunction LENGTHCHANGE LENGTHCHANGE
 * @param {any[][]} length Free length of the hose: one value or a column, any unit of length (mm or in).
 * @param {any[][]} [shorten] Share it may shorten by, as a fraction: 4 % is 0.04 (blank = 0.04).
 * @param {any[][]} [lengthen] Share it may lengthen by, as a fraction: 2 % is 0.02 (blank = 0.02).
 * @returns {any[][]} Two columns: shortest and longest length under pressure, in the unit of the length. #VALUE! where a share is no fraction.
 * Source: +2 % published, -4 % from memory; the hose's own data come first.
 * @example =HOSE.LENGTHCHANGE(1000) gives 960 and 1020
 */
export function lengthChange(length: any[][], shorten?: any[][], lengthen?: any[][]): any[][] {
  return answer(() => {
    const down = optionalSingle('shorten', shorten, fraction) ?? USUAL_LENGTH_CHANGE.shorten;
    const up = optionalSingle('lengthen', lengthen, fraction) ?? USUAL_LENGTH_CHANGE.lengthen;
    return mapRows([lengthColumn('length', length)], 2, free => {
      const { shortest, longest } = lengthChangeOf(free, down, up);
      return [shortest, longest];
    });
  });
}

/**
 * Length of hose along a route: its straights and the arcs of its bends.
 * @customfunction ROUTELENGTH ROUTELENGTH
 * @param {any[][]} straights Lengths of the straight parts: one value or a list; 0 where there is none (one unit for all lengths, mm or in).
 * @param {any[][]} bendRadius Radius of the bend, to the hose's axis: one value for all bends, or a list with one for each angle, in the same order (same unit).
 * @param {any[][]} bendAngle Angle of the bend, in degrees: one value, or a list.
 * @param {any[][]} [outsideDiameter] Outside diameter of the hose, where the radii are measured to the inside of the bend (same unit; blank = radii to the axis).
 * @returns {any[][]} One number: length of hose along the route, in the same unit. #VALUE! names the argument that is missing or cannot be read.
 * Source: geometry; slack and straight runs at the couplings come on top.
 * @example =HOSE.ROUTELENGTH(50.8, 180, 180, 22) gives 650.844
 */
export function routeLength(straights: any[][], bendRadius: any[][], bendAngle: any[][], outsideDiameter?: any[][]): any[][] {
  return answer(() => {
    const straight = numberList('straights', straights, number({ sign: 'notNegative', hint: 'enter a length' }));
    const bends = bendList(bendRadius, bendAngle);
    const diameter = optionalSingle('outside diameter', outsideDiameter, readDiameter);
    return table([[routeLengthOf(straight, bends, diameter)]]);
  });
}
