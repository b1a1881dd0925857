import type { LengthUnit } from '../../core/units/lengthUnit';
import type { MachineReadings } from './analyseReadings';
import { responseOf } from './dialMove';

/** How the dial acts, as the crimps show it, beside what is stated of the machine. */
export function responseText(machine: MachineReadings, unit: LengthUnit): string {
  const response = responseOf(machine);
  if (!response) return 'Dial: no combination was crimped at two settings, so these crimps do not show what a digit does.';
  const { perDigit, low, high, crimps } = response;
  const digits = unit === 'mm' ? 4 : 5;
  const amount = (value: number) => `${Math.abs(value).toFixed(digits)} ${unit}`;
  if (low === undefined || high === undefined) {
    return `Dial: about ${amount(perDigit)} a digit from ${crimps} crimps: too few for an interval.`;
  }
  if (low <= 0 && high >= 0)
    return `Dial: ${crimps} crimps do not show which way a digit acts; measure some at dials further apart.`;
  const way = perDigit > 0 ? 'tighter' : 'looser';
  const [near, far] = [low, high].map(Math.abs).sort((a, b) => a - b) as [number, number];
  const sentence = `Dial: one digit up crimps ${amount(perDigit)} ${way} (95 %: ${near.toFixed(digits)} to ${amount(far)}; ${crimps} crimps).`;
  const stated = machine.facts(machine.die).step;
  if (!stated) return sentence;
  const fits = stated.value.gte(low) && stated.value.lte(high);
  const statedText = `${stated.value} ${unit}, ${stated.from}`;
  return fits ? `${sentence} That fits ${statedText}.` : `${sentence} That does not fit ${statedText}: check it.`;
}
