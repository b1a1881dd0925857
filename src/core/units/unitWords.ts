import { Decimal } from './decimal';
import { FLOW_UNIT_WORDS, type FlowQuantity } from './flowUnitWords';
import { FOOT, INCH, POUND, POUND_FORCE, unit, type UnitWords } from './listedUnit';

/** Quantities whose units are words of their own; those per length are made of them (see measureUnit). */
export type PlainQuantity = 'length' | 'pressure' | 'temperature' | 'mass' | FlowQuantity;

/**
 * THE list of unit words: whatever reads a unit looks here. The usual unit of each quantity comes first.
 * Factors are exact, in m, Pa, K, kg, m³, m³/s, m/s and m²/s. Source: NIST SP 811 (2008), appendix B; psi = lbf/in² from its exact
 * parts, the inch of mercury is the conventional one.
 */
export const UNIT_WORDS: Readonly<Record<PlainQuantity, readonly UnitWords[]>> = {
  length: [
    unit('mm', '0.001', 'millimetre|millimetres|millimeter|millimeters'),
    unit('cm', '0.01', 'centimetre|centimetres|centimeter|centimeters'),
    unit('m', 1, 'metre|metres|meter|meters'),
    unit('in', INCH, 'inch|inches|"'),
    unit('ft', FOOT, "foot|feet|'"),
    unit('yd', INCH.times(36), 'yds|yard|yards'),
    unit('thou', INCH.div(1000), 'mil|mils'),
  ],
  pressure: [
    unit('bar', 100_000, 'bars'),
    unit('mbar', 100, 'millibar|millibars'),
    unit('MPa', 1_000_000, 'megapascal|megapascals'),
    unit('kPa', 1000, 'kilopascal|kilopascals'),
    unit('Pa', 1, 'pascal|pascals'),
    unit('psi', POUND_FORCE.div(INCH.times(INCH)), 'psig|lbf/in²|lbf/in2'),
    unit('inHg', '3386.389', 'in hg|in. hg|"hg|" hg|in.hg|inches hg|in of mercury|inch of mercury|inches of mercury'),
  ],
  temperature: [
    unit('°C', 1, 'c|degc|deg c|deg. c|degrees c|celsius|degrees celsius', '273.15'),
    unit('°F', new Decimal(5).div(9), 'f|degf|deg f|deg. f|degrees f|fahrenheit|degrees fahrenheit', '459.67'),
    unit('K', 1, 'kelvin'),
  ],
  mass: [
    unit('kg', 1, 'kgs|kilogram|kilograms'),
    unit('g', '0.001', 'gram|grams'),
    unit('lb', POUND, 'lbs|pound|pounds'),
    unit('oz', POUND.div(16), 'ounce|ounces'),
  ],
  ...FLOW_UNIT_WORDS,
};

const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/[\u2032\u2018\u2019]/g, "'"],
  [/[\u2033\u201c\u201d]|''/g, '"'],
  [/[º˚]/g, '°'],
  [/℃/g, '°c'],
  [/℉/g, '°f'],
  [/\s+/g, ' '],
  [/° /g, '°'],
  [/\s*(?:\/|\bper\b)\s*/g, '/'],
  [/(?<=[a-z])\.$/, ''],
];

/** A text as the list spells units: lower case, one kind of marks and blanks, `/` for `per`, no full stop behind an abbreviation. */
export function tidyUnitText(text: string): string {
  return SPELLINGS.reduce((spelt, [pattern, by]) => spelt.replace(pattern, by), text.trim().toLowerCase()).trim();
}
