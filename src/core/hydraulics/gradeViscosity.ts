import { ISO_VISCOSITY_GRADES } from '../tables/isoViscosityGrades';
import { TradeError } from '../tradeError';
import { viscosityAt } from './viscosityAt';

const COLDEST = -60;
const HOTTEST = 200;

const message = (celsius: number, unit: '°C' | '°F') =>
  `${Number((unit === '°F' ? celsius * 1.8 + 32 : celsius).toPrecision(6))} ${unit}`;

/**
 * Kinematic viscosity of an oil of an ISO viscosity grade with viscosity index 100.
 * @param grade e.g. 46
 * @param celsius −60 … 200 °C
 * @param unit in which an error tells the temperature
 * @returns mm²/s
 * @throws TradeError `choice` for what is no grade, `impossible` for grades too thin for a viscosity index, `range` for the temperature
 * Source: ISO 3448, ASTM D2270, ASTM D341.
 * @example grade 46 at 20 °C: 134.49
 */
export function gradeViscosity(grade: number, celsius: number, unit: '°C' | '°F' = '°C'): number {
  const found = ISO_VISCOSITY_GRADES.find(row => row.grade === grade);
  if (!found) {
    const grades = ISO_VISCOSITY_GRADES.filter(row => row.at100 !== undefined).map(row => row.grade);
    throw new TradeError('choice', 'grade', `is ${grade}`, `enter an ISO viscosity grade: ${grades.join(', ')}`);
  }
  if (found.at100 === undefined) {
    throw new TradeError('impossible', 'grade', `is ${grade}`, 'oil this thin has no viscosity index; use grades from 7 up');
  }
  if (!(celsius >= COLDEST && celsius <= HOTTEST)) {
    const advice = `it must lie between ${message(COLDEST, unit)} and ${message(HOTTEST, unit)}; check the unit`;
    throw new TradeError('range', 'temperature', `is ${message(celsius, unit)}`, advice);
  }
  return viscosityAt(celsius, { celsius: 40, viscosity: found.at40 }, { celsius: 100, viscosity: found.at100 });
}
