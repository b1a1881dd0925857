import { Decimal } from './decimal';

/*
 * The fast way of this project's exact arithmetic. Numbers of a sheet are short (27.45), so a whole number and its count of decimals hold them
 * without any rounding: 2745 and 2. Sums, products and comparisons of such pairs are whole-number arithmetic of doubles, exact below 2^53.
 * A ScaledDecimal is a Decimal: whoever reckons with it writes and reads the same, and wherever a result does not fit (1 ÷ 3, 20 digits) or
 * a method is not here, decimal.js does the work from the same digits. Both ways are held against each other in tests/core/units/scaledDecimal.test.ts.
 */

/** Powers of ten that a double holds exactly. */
const TENS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
/** Digits that a spreadsheet cell holds. A computed cell carries binary noise behind them (0.1 + 0.2), a typed one nothing. */
export const CELL_DIGITS = 15;
const MOST_DIVIDEND_ZEROS = 3;

type Value = Parameters<Decimal['plus']>[0];
/** What a result is made of: two numbers as whole numbers with the same count of decimals. */
type Aligned<T> = (a: number, b: number, decimals: number) => T;

const sum: Aligned<Decimal | undefined> = (a, b, decimals) => fitting(a + b, decimals);
const difference: Aligned<Decimal | undefined> = (a, b, decimals) => fitting(a - b, decimals);
const order: Aligned<number> = (a, b) => Math.sign(a - b);
/** The remainder is exact, so the quotient is, too. */
const wholeQuotient: Aligned<Decimal | undefined> = (a, b) => fitting((a - (a % b)) / b, 0);

/** decimal.js' methods without its constructor, which would take the digits apart. */
const Methods = class {} as new () => Decimal;
Object.setPrototypeOf(Methods.prototype, Decimal.prototype as object);

class ScaledDecimal extends Methods {
  private whole: Decimal | undefined;

  constructor(
    readonly digits: number,
    readonly decimals: number,
  ) {
    super();
    this.whole = undefined;
  }

  /** The same number as decimal.js keeps it. */
  get slow(): Decimal {
    return (this.whole ??= new Decimal(`${this.digits}e-${this.decimals}`));
  }

  override plus(other: Value): Decimal {
    return aligned(this, other, sum) ?? super.plus(other);
  }

  override minus(other: Value): Decimal {
    return aligned(this, other, difference) ?? super.minus(other);
  }

  override times(other: Value): Decimal {
    const y = scaledOf(other);
    return (y && fitting(this.digits * y.digits, this.decimals + y.decimals)) ?? super.times(other);
  }

  override div(other: Value): Decimal {
    const y = scaledOf(other);
    for (let zeros = 0; y && zeros <= MOST_DIVIDEND_ZEROS; zeros += 1) {
      const dividend = this.digits * TENS[zeros]!;
      if (Number.isSafeInteger(dividend) && dividend % y.digits === 0)
        return fitting(dividend / y.digits, this.decimals + zeros - y.decimals) ?? super.div(other);
    }
    return super.div(other);
  }

  override divToInt(other: Value): Decimal {
    return aligned(this, other, wholeQuotient) ?? super.divToInt(other);
  }

  override cmp(other: Value): number {
    const y = scaledOf(other);
    if (!y) return super.cmp(other);
    // Rounding keeps the order: doubles that differ tell it, equal ones do not.
    const byDoubles = Math.sign(this.toNumber() - y.toNumber());
    return byDoubles || (aligned(this, y, order) ?? super.cmp(y));
  }

  override abs(): Decimal {
    return this.digits < 0 ? new ScaledDecimal(-this.digits, this.decimals) : this;
  }

  override negated(): Decimal {
    return new ScaledDecimal(-this.digits, this.decimals);
  }

  override isZero(): boolean {
    return this.digits === 0;
  }

  override isNegative(): boolean {
    return this.digits < 0;
  }

  /** Both are exact, so the quotient is the double that lies nearest. */
  override toNumber(): number {
    return this.digits / TENS[this.decimals]!;
  }
}

// What decimal.js itself looks at: a number's digits, exponent and sign, and the class that results are made of.
for (const part of ['d', 'e', 's'] as const) {
  Object.defineProperty(ScaledDecimal.prototype, part, {
    get(this: ScaledDecimal) {
      return this.slow[part];
    },
  });
}
ScaledDecimal.prototype.constructor = Decimal;

/** The number where its whole number is exact: a sum or product that a double had to round lies beyond 2^53 and is left to decimal.js. */
function fitting(digits: number, decimals: number): ScaledDecimal | undefined {
  return Number.isSafeInteger(digits) && decimals >= 0 && decimals < TENS.length
    ? new ScaledDecimal(digits, decimals)
    : undefined;
}

function scaledOf(value: Value): ScaledDecimal | undefined {
  if (value instanceof ScaledDecimal) return value;
  return typeof value === 'number' ? fitting(value, 0) : undefined;
}

function aligned<T>(x: ScaledDecimal, other: Value, result: Aligned<T>): T | undefined {
  const y = scaledOf(other);
  if (!y) return undefined;
  const gap = x.decimals - y.decimals;
  const a = gap < 0 ? x.digits * TENS[-gap]! : x.digits;
  const b = gap > 0 ? y.digits * TENS[gap]! : y.digits;
  return Number.isSafeInteger(a) && Number.isSafeInteger(b) ? result(a, b, gap < 0 ? y.decimals : x.decimals) : undefined;
}

/** A double as a decimal of at most 15 digits; undefined where it is none, but the result of a binary calculation. */
function typed(value: number): ScaledDecimal | undefined {
  for (let decimals = 0; decimals <= CELL_DIGITS; decimals += 1) {
    const digits = Math.round(value * TENS[decimals]!);
    if (Math.abs(digits) >= TENS[CELL_DIGITS]!) break;
    // At most one decimal of 15 digits lies this near to a double.
    if (digits / TENS[decimals]! === value) return fitting(digits, decimals);
  }
  return undefined;
}

/** A cell's number as the decimal that was typed: rounded to the 15 significant digits a spreadsheet keeps. */
export function decimalOfCell(value: number): Decimal {
  return typed(value) ?? typed(Number(value.toPrecision(CELL_DIGITS))) ?? new Decimal(value.toPrecision(CELL_DIGITS));
}

/** The same number, ready for the fast way where it fits. */
export function scaled(value: Decimal): Decimal {
  const found = typed(value.toNumber());
  return found?.eq(value) ? found : value;
}
