import { Decimal } from './decimal';
import type { UnitWords } from './listedUnit';
import { tidyUnitText, UNIT_WORDS, type PlainQuantity } from './unitWords';

/** Kinds of unit that a heading, a cell or a field can state. */
export type Quantity = PlainQuantity | 'massPerLength' | 'perLength';

/** A unit of measure: (value + offset) × factor is the value in the quantity's own base unit. */
export interface MeasureUnit {
  readonly quantity: Quantity;
  /** As it is printed: `mm`, `bar`, `°C`, `kg/m`, `per m`. */
  readonly symbol: string;
  readonly factor: Decimal;
  readonly offset?: Decimal;
}

const PLAIN = Object.keys(UNIT_WORDS) as readonly PlainQuantity[];

const ofWords = (quantity: PlainQuantity, { symbol, factor, offset }: UnitWords): MeasureUnit => ({
  quantity,
  symbol,
  factor,
  ...(offset ? { offset } : {}),
});

const PLAIN_UNITS = PLAIN.map(
  quantity =>
    [
      quantity,
      UNIT_WORDS[quantity].map(words => ({
        unit: ofWords(quantity, words),
        words: [tidyUnitText(words.symbol), ...words.words],
      })),
    ] as const,
);
const BY_WORD: ReadonlyMap<PlainQuantity, ReadonlyMap<string, MeasureUnit>> = new Map(
  PLAIN_UNITS.map(([quantity, units]) => [
    quantity,
    new Map(units.flatMap(({ unit, words }) => words.map(word => [word, unit] as const))),
  ]),
);
/** Units made of two, once each, so that equal units are one object. */
const made = new Map<string, MeasureUnit>();

function madeOf(quantity: Quantity, symbol: string, factor: Decimal): MeasureUnit {
  let found = made.get(symbol);
  if (!found) made.set(symbol, (found = { quantity, symbol, factor }));
  return found;
}

const plainUnit = (quantity: PlainQuantity, word: string) => BY_WORD.get(quantity)!.get(word);

/** `EUR/m`, `€/100 ft`, `/m` → `per m`, `per 100 ft`. */
function perLengthUnit(text: string): MeasureUnit | undefined {
  const [, hundred, word] = /^[^/]*\/(100 ?)?([^/]+)$/.exec(text) ?? [];
  const length = word === undefined ? undefined : plainUnit('length', word);
  if (!length) return undefined;
  const metres = hundred ? length.factor.times(100) : length.factor;
  return madeOf('perLength', `per ${hundred ? '100 ' : ''}${length.symbol}`, new Decimal(1).div(metres));
}

/** `kg/m`, `lbs/ft`. */
function massPerLengthUnit(text: string): MeasureUnit | undefined {
  const [first, second, ...rest] = text.split('/');
  if (second === undefined || rest.length > 0) return undefined;
  const [mass, length] = [plainUnit('mass', first!.trim()), plainUnit('length', second.trim())];
  return mass && length && madeOf('massPerLength', `${mass.symbol}/${length.symbol}`, mass.factor.div(length.factor));
}

/**
 * The unit that a text names.
 * @param quantity what it measures
 * @param text e.g. `mm`, `metres`, `″`, `°F`, `lb/ft`, `EUR per m`; `mm per digit` and `mm per turn` are millimetres
 * @returns undefined where the text is no unit of that quantity
 */
export function measureUnit(quantity: Quantity, text: string): MeasureUnit | undefined {
  const tidy = tidyUnitText(text);
  if (quantity === 'perLength') return perLengthUnit(tidy);
  if (quantity === 'massPerLength') return massPerLengthUnit(tidy);
  return plainUnit(quantity, tidy) ?? plainUnit(quantity, tidy.replace(/\/(?:digit|turn)$/, ''));
}

/** The unit that a text names, of whatever quantity it is; undefined where it is none. */
export function anyMeasureUnit(text: string): MeasureUnit | undefined {
  const quantities: readonly Quantity[] = [...PLAIN, 'massPerLength', 'perLength'];
  for (const quantity of quantities) {
    const found = measureUnit(quantity, text);
    if (found) return found;
  }
  return undefined;
}

const SYMBOLS_PER_LENGTH = {
  massPerLength: 'kg/m, kg/in, kg/ft, g/m, g/in, g/ft, lb/in, lb/ft, oz/m, oz/in, oz/ft',
  perLength: 'per mm, per cm, per m, per in, per ft, per yd',
};

/** Symbols of a quantity, for a sentence: `mm, cm, m, in, ft, yd, thou`. */
export function unitSymbols(quantity: Quantity): string {
  if (quantity === 'massPerLength' || quantity === 'perLength') return SYMBOLS_PER_LENGTH[quantity];
  return UNIT_WORDS[quantity].map(({ symbol }) => symbol).join(', ');
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
