import { Decimal } from './decimal';

/** Kinds of unit that a column heading can state. */
export type Quantity = 'length' | 'pressure' | 'temperature' | 'mass' | 'massPerLength' | 'perLength';

/** A unit of measure: (value + offset) × factor is the value in the quantity's own base unit. */
export interface MeasureUnit {
  readonly quantity: Quantity;
  /** As it is printed: `mm`, `bar`, `°C`, `kg/m`, `per m`. */
  readonly symbol: string;
  readonly factor: Decimal;
  readonly offset?: Decimal;
}

const POUND_FORCE_NEWTON = new Decimal('4.4482216152605');
const INCH_METRE = new Decimal('0.0254');
const POUND_KILOGRAM = new Decimal('0.45359237');

/** Exact factors. Source: NIST SP 811 (2008), appendix B; psi = lbf/in² from its exact parts, the inch of mercury is the conventional one. */
const LENGTHS = { mm: '0.001', cm: '0.01', m: '1', in: INCH_METRE, ft: INCH_METRE.times(12) };
const PRESSURES = {
  bar: '100000',
  mbar: '100',
  MPa: '1000000',
  kPa: '1000',
  Pa: '1',
  psi: POUND_FORCE_NEWTON.div(INCH_METRE.times(INCH_METRE)),
  inHg: '3386.389',
};
const MASSES = { kg: '1', g: '0.001', lb: POUND_KILOGRAM, oz: POUND_KILOGRAM.div(16) };

type Factor = string | number | Decimal;

const unit = (quantity: Quantity, symbol: string, factor: Factor, offset?: string): MeasureUnit => ({
  quantity,
  symbol,
  factor: new Decimal(factor),
  ...(offset === undefined ? {} : { offset: new Decimal(offset) }),
});

function each<T>(table: Readonly<Record<string, Factor>>, make: (symbol: string, factor: Factor) => T): T[] {
  return Object.entries(table).map(([symbol, factor]) => make(symbol, factor));
}

/** All units that are understood, the usual one of each quantity first. */
const MEASURE_UNITS: readonly MeasureUnit[] = [
  ...each(LENGTHS, (symbol, factor) => unit('length', symbol, factor)),
  ...each(PRESSURES, (symbol, factor) => unit('pressure', symbol, factor)),
  unit('temperature', '°C', 1, '273.15'),
  unit('temperature', '°F', new Decimal(5).div(9), '459.67'),
  unit('temperature', 'K', 1),
  ...each(MASSES, (symbol, factor) => unit('mass', symbol, factor)),
  ...each(MASSES, (mass, factor) =>
    each(LENGTHS, (length, metres) => unit('massPerLength', `${mass}/${length}`, new Decimal(factor).div(metres))),
  ).flat(),
  ...each(LENGTHS, (length, metres) => unit('perLength', `per ${length}`, new Decimal(1).div(metres))),
  ...each(LENGTHS, (length, metres) =>
    unit('perLength', `per 100 ${length}`, new Decimal(1).div(new Decimal(metres).times(100))),
  ),
];

const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/[º˚]/g, '°'],
  [/℃/g, '°c'],
  [/℉/g, '°f'],
  [/\s+/g, ' '],
  [/\b(millimetres?|millimeters?)\b/g, 'mm'],
  [/\b(centimetres?|centimeters?)\b/g, 'cm'],
  [/\b(metres?|meters?)\b/g, 'm'],
  [/\b(inch|inches)\b|"/g, 'in'],
  [/\bin\.? ?(?:of )?(?:hg|mercury)\b/, 'inhg'],
  [/\b(foot|feet)\b/g, 'ft'],
  [/\b(lbs|pounds?)\b/g, 'lb'],
  [/° /g, '°'],
  [/^(deg\.? ?)?([cf])$/g, '°$2'],
];

const key = (symbol: string) => symbol.toLowerCase();
const BY_SYMBOL = new Map(MEASURE_UNITS.map(found => [`${found.quantity} ${key(found.symbol)}`, found]));

function tidy(text: string): string {
  return SPELLINGS.reduce((spelt, [pattern, by]) => spelt.replace(pattern, by), text.trim().toLowerCase());
}

/** `EUR per m`, `€/m`, `per 100 ft` → `per m`, `per 100 ft`; `kg per m` → `kg/m`. */
function candidates(quantity: Quantity, text: string): string[] {
  if (quantity === 'perLength') return [text.replace(/^.*?(?:\bper|\/)\s*/, 'per ')];
  if (quantity === 'massPerLength') return [text.replace(/\s*(?:\bper|\/)\s*/, '/')];
  return [text, text.replace(/\s*(?:\bper|\/)\s*(?:digit|turn)$/, '')];
}

/**
 * The unit that a text names.
 * @param quantity what the column holds
 * @param text e.g. `mm`, `in`, `°F`, `lb/ft`, `EUR per m`
 * @returns undefined where the text is no unit of that quantity
 */
export function measureUnit(quantity: Quantity, text: string): MeasureUnit | undefined {
  for (const candidate of candidates(quantity, tidy(text))) {
    const found = BY_SYMBOL.get(`${quantity} ${candidate}`);
    if (found) return found;
  }
  return undefined;
}

/** Symbols of a quantity, for a sentence: `mm, cm, m, in, ft`. */
export function unitSymbols(quantity: Quantity): string {
  const symbols = MEASURE_UNITS.filter(found => found.quantity === quantity).map(found => found.symbol);
  return symbols.filter(symbol => !/100|[gz]\/(?:mm|cm)|lb\/(?:mm|cm|m$)/.test(symbol)).join(', ');
}

/**
 * A value in another unit of the same quantity, exactly (temperatures with their offset).
 * @example convertMeasure(new Decimal(212), fahrenheit, celsius) // 100
 */
export function convertMeasure(value: Decimal, from: MeasureUnit, to: MeasureUnit): Decimal {
  if (from.symbol === to.symbol) return value;
  const inBase = value.plus(from.offset ?? 0).times(from.factor);
  return inBase.div(to.factor).minus(to.offset ?? 0);
}
