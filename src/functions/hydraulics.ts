import { boreSize as boreSizeOf } from '../core/hydraulics/boreSize';
import { SI_OF, type FlowUnits } from '../core/hydraulics/flowUnits';
import { gradeViscosity } from '../core/hydraulics/gradeViscosity';
import { pressureDrop as pressureDropOf } from '../core/hydraulics/pressureDrop';
import { velocity as velocityOf } from '../core/hydraulics/velocity';
import { TradeError } from '../core/tradeError';
import type { Decimal } from '../core/units/decimal';
import { answer } from '../cells/answer';
import { column } from '../cells/columns';
import { choice, number, quoted, type CellReader } from '../cells/readers';
import { mapRows } from '../cells/rows';
import { optionalSingle, single, type Cells } from '../cells/singles';

const readFlow = number({ sign: 'notNegative', marks: 'noLength', hint: 'enter the flow', like: '60 or 12.5' });
const marksOfBore = (unit: FlowUnits) => (unit === 'metric' ? 'refused' : 'inches');
const readBore = (unit: FlowUnits) =>
  number({ sign: 'positive', mayBeDate: true, zeroIsBlank: true, hint: 'enter the bore', marks: marksOfBore(unit) });
const readRun = (unit: FlowUnits) =>
  number({ sign: 'positive', zeroIsBlank: true, hint: 'enter the length', marks: unit === 'metric' ? 'refused' : 'feet' });
const readAmount = (hint: string) => number({ sign: 'positive', zeroIsBlank: true, marks: 'noLength', hint, like: '5 or 12.5' });
/** Less than air has, 1.2 kg/m³: a density in g/cm³. */
const THINNEST = 1.15;
const readDensity: CellReader<Decimal> = (cell, label) => {
  const density = readAmount('enter the density in kg/m³')(cell, label);
  if (density.gte(THINNEST)) return density;
  throw new TradeError('unit', label, `is ${density}`, 'in kg/m³ that is less than air; oil has about 870 (0.87 g/cm³)');
};
const unitsOf = (unit: Cells) => single<FlowUnits>('unit', unit, choice('metric', 'US'));

/** `46`, `VG 46` or `ISO VG 46`. */
const readGrade: CellReader<number> = (cell, label) => {
  const found = /^(?:(?:ISO[\s-]*)?VG[\s-]*)?(\d{1,6})$/i.exec(String(cell).trim());
  if (!found) throw new TradeError('choice', label, `is ${quoted(cell)}`, 'enter an ISO viscosity grade like 46 or VG 46');
  return Number(found[1]);
};

/**
 * Mean velocity of a flow in a hose or pipe.
 * @customfunction VELOCITY VELOCITY
 * @param {any[][]} flow Flow: one value or a column (metric L/min, US gpm).
 * @param {any[][]} bore Bore: one value or a column (metric mm, US in).
 * @param {any[][]} unit System of units: "metric" or "US".
 * @returns {any[][]} Velocity, one a row (metric m/s, US ft/s). #VALUE! names the argument that is missing or cannot be read.
 * Source: continuity; units NIST SP 811.
 * @example =HOSE.VELOCITY(60, 20, "metric") gives 3.183
 */
export function velocity(flow: any[][], bore: any[][], unit: any[][]): any[][] {
  return answer(() => {
    const units = unitsOf(unit);
    const si = SI_OF[units];
    return mapRows(
      [column('flow', flow, readFlow), column('bore', bore, readBore(units))],
      1,
      (flowIn, boreIn) => velocityOf(flowIn.toNumber() * si.flow, boreIn.toNumber() * si.bore) / si.velocity,
    );
  });
}

/**
 * Smallest bore in which a flow is no faster than a velocity.
 * @customfunction BORESIZE BORESIZE
 * @param {any[][]} flow Flow: one value or a column (metric L/min, US gpm).
 * @param {any[][]} velocity Velocity not to be exceeded: one value or a column (metric m/s, US ft/s).
 * @param {any[][]} unit System of units: "metric" or "US".
 * @returns {any[][]} Bore, one a row (metric mm, US in). #VALUE! names the argument that is missing or cannot be read.
 * Source: continuity; units NIST SP 811.
 * @example =HOSE.BORESIZE(60, 5, "metric") gives 15.96
 */
export function boreSize(flow: any[][], velocity: any[][], unit: any[][]): any[][] {
  return answer(() => {
    const si = SI_OF[unitsOf(unit)];
    return mapRows(
      [column('flow', flow, readAmount('enter the flow')), column('velocity', velocity, readAmount('enter the velocity'))],
      1,
      (amount, speed) => boreSizeOf(amount.toNumber() * si.flow, speed.toNumber() * si.velocity) / si.bore,
    );
  });
}

/**
 * Pressure lost to friction along a straight hose or pipe; couplings and bends come on top.
 * @customfunction PRESSUREDROP PRESSUREDROP
 * @param {any[][]} flow Flow: one value or a column (metric L/min, US gpm).
 * @param {any[][]} bore Bore: one value or a column (metric mm, US in).
 * @param {any[][]} length Length: one value or a column (metric m, US ft).
 * @param {any[][]} viscosity Kinematic viscosity at working temperature: one value or a column (mm²/s, the same as cSt, in both systems).
 * @param {any[][]} unit System of units: "metric" or "US".
 * @param {any[][]} [density] Density of the fluid, one value (kg/m³ in both systems; blank = 870).
 * @param {any[][]} [roughness] Roughness of the bore's wall, one value (in the bore's unit, at most 1/20 of the bore; blank = 0, smooth).
 * @returns {any[][]} Pressure drop, one a row (metric bar, US psi): laminar to Reynolds number 2300, Colebrook from 4000, between them the larger. #VALUE! names the argument that is missing or cannot be read.
 * Source: Darcy and Weisbach, Colebrook; White, Fluid Mechanics, chapter 6; units NIST SP 811.
 * @example =HOSE.PRESSUREDROP(60, 20, 10, 46, "metric") gives 1.02
 */
export function pressureDrop(
  flow: any[][],
  bore: any[][],
  length: any[][],
  viscosity: any[][],
  unit: any[][],
  density?: any[][],
  roughness?: any[][],
): any[][] {
  return answer(() => {
    const units = unitsOf(unit);
    const si = SI_OF[units];
    const densityIn = optionalSingle('density', density, readDensity)?.toNumber() ?? 870;
    const roughnessIn =
      optionalSingle(
        'roughness',
        roughness,
        number({ sign: 'notNegative', mayBeDate: true, hint: 'enter the roughness', marks: marksOfBore(units) }),
      )?.toNumber() ?? 0;
    return mapRows(
      [
        column('flow', flow, readFlow),
        column('bore', bore, readBore(units)),
        column('length', length, readRun(units)),
        column('viscosity', viscosity, readAmount('enter the viscosity')),
      ],
      1,
      (flowIn, boreIn, lengthIn, viscosityIn) =>
        pressureDropOf({
          flow: flowIn.toNumber() * si.flow,
          bore: boreIn.toNumber() * si.bore,
          length: lengthIn.toNumber() * si.length,
          viscosity: viscosityIn.toNumber() * 1e-6,
          density: densityIn,
          roughness: roughnessIn * si.bore,
        }) / si.pressure,
    );
  });
}

/**
 * Kinematic viscosity of an oil of an ISO viscosity grade, viscosity index 100, at a temperature.
 * @customfunction VISCOSITY VISCOSITY
 * @param {any[][]} grade ISO viscosity grade, one value: 46, "VG 46" or "ISO VG 46" (7 to 3200).
 * @param {any[][]} temperature Temperature of the oil: one value or a column (metric °C, US °F), -60 to 200 °C.
 * @param {any[][]} unit "metric" or "°C" for degrees Celsius, "US" or "°F" for degrees Fahrenheit.
 * @returns {any[][]} Kinematic viscosity, one a row, in mm²/s (the same as cSt) in both systems. #VALUE! lists the grades where it is none.
 * Source: ISO 3448, ASTM D2270 (viscosity index 100), ASTM D341.
 * @example =HOSE.VISCOSITY(46, 60, "metric") gives 20.56
 */
export function viscosity(grade: any[][], temperature: any[][], unit: any[][]): any[][] {
  return answer(() => {
    const oil = single('grade', grade, readGrade);
    const fahrenheit = ['US', '°F', 'F'].includes(single('unit', unit, choice('metric', 'US', '°C', '°F', 'C', 'F')));
    return mapRows(
      [column('temperature', temperature, number({ marks: 'noLength', hint: 'enter the temperature', like: '40 or -10' }))],
      1,
      degrees =>
        fahrenheit ? gradeViscosity(oil, (degrees.toNumber() - 32) / 1.8, '°F') : gradeViscosity(oil, degrees.toNumber()),
    );
  });
}
