import { seededUniform } from '../../../bench/seededUniform';
import type { Decimal } from '../../../src/core/units/decimal';
import { decimalOfCell, scaled } from '../../../src/core/units/scaledDecimal';
import { cellNumber, pick, slowly, wholeBetween, type Uniform } from './cellNumbers';

/** `npm run bench -- exact` takes more. */
const CASES = Number(process.env.EXACT_CASES ?? 50_000);
const SEED = Number(process.env.EXACT_SEED ?? 20261130);

const operations = ['plus', 'minus', 'times', 'div', 'divToInt'] as const;
const comparisons = ['lt', 'lte', 'gt', 'gte', 'eq'] as const;

/** All that can be asked of a number. Zero has no sign in a cell, so none is asked for. */
const message = (value: Decimal) =>
  `${value} ${value.toNumber() + 0} ${value.isZero()} ${!value.isZero() && value.isNegative()} ${value.isInteger()}`;

const order = (a: Decimal, b: Decimal) => `${a.cmp(b)} ${comparisons.map(name => a[name](b)).join()}`;

/** One case: two numbers, an operation and a second one on its result; undefined where both ways agree. */
function difference(uniform: Uniform): unknown {
  const [a, b, c] = [
    cellNumber(uniform),
    uniform() < 0.1 ? wholeBetween(uniform, -12, 12) : cellNumber(uniform),
    cellNumber(uniform),
  ];
  const [first, second] = [pick(uniform, operations), pick(uniform, operations)];
  if (b === 0 && first.startsWith('div')) return undefined;
  const [fastA, fastB, fastC] = [decimalOfCell(a), decimalOfCell(b), decimalOfCell(c)];
  const [slowA, slowB, slowC] = [slowly(a), slowly(b), slowly(c)];
  // The other number comes in each of the ways that decimal.js takes.
  const other = pick<Parameters<Decimal['plus']>[0]>(uniform, [
    fastB,
    fastB,
    slowB,
    ...(Number.isInteger(b) && Math.abs(b) < 1e15 ? [b] : []),
  ]);
  const [fast, slow] = [fastA[first](other), slowA[first](slowB)];
  const pairs: [string, string][] = [
    [message(fastA), message(slowA)],
    [order(fastA, fastB), order(slowA, slowB)],
    [order(fast, fastC), order(slow, slowC)],
    [message(fast), message(slow)],
    [message(fast.abs()), message(slow.abs())],
    [message(fast.negated().plus(fastC)), message(slow.negated().plus(slowC))],
    [message(scaled(slow)), message(slow)],
  ];
  if (c !== 0)
    pairs.push(
      [message(fast[second](fastC)), message(slow[second](slowC))],
      [message(slow[second](fastC)), message(slow[second](slowC))],
    );
  const found = pairs.find(([one, another]) => one !== another);
  return found && { a, b, c, first, second, fast: found[0], slow: found[1] };
}

test(`the fast way reckons as decimal.js does, in ${CASES} cases from seed ${SEED}`, () => {
  const uniform = seededUniform(SEED);
  for (let index = 0; index < CASES; index += 1) {
    const found = difference(uniform);
    if (found) throw new Error(`case ${index} of seed ${SEED}: ${JSON.stringify(found)}`);
  }
});

test('sums, differences and comparisons just below, at and above 2^53, where doubles begin to skip whole numbers', () => {
  const near = 900_719_925_474_099;
  for (let tenths = -30; tenths <= 30; tenths += 1) {
    for (const a of [near, near - 1, near / 10, -near]) {
      const b = tenths / 10;
      for (const name of ['plus', 'minus', 'cmp'] as const) {
        expect([a, b, name, String(decimalOfCell(a)[name](decimalOfCell(b)))]).toEqual([
          a,
          b,
          name,
          String(slowly(a)[name](slowly(b))),
        ]);
      }
    }
  }
});

test('numbers that differ and have the same double are told apart', () => {
  const [fast, slow] = [decimalOfCell, slowly].map(read => (step: number) => read(8.1).plus(read(step * 1e-15)));
  for (let step = 0; step < 40; step += 1) expect(order(fast!(step), fast!(step + 1))).toBe(order(slow!(step), slow!(step + 1)));
});

test('a quotient is whole only where it is so beyond 2^53, too', () => {
  for (let by = 2; by <= 80; by += 1) {
    for (let a = 900_719_925_474_050; a <= 900_719_925_474_099; a += 1) {
      const [fast, slow] = [decimalOfCell(a).div(by), slowly(a).div(by)];
      if (!fast.eq(slow)) throw new Error(`${a} ÷ ${by} is ${slow}, not ${fast}`);
    }
  }
});

test('products with as many decimals as a power of ten that a double holds, and with more', () => {
  for (let a = 0; a <= 15; a += 1) {
    for (let b = 0; b <= 15; b += 1) {
      const [x, y] = [Number(`3e-${a}`), Number(`7e-${b}`)];
      expect(message(decimalOfCell(x).times(decimalOfCell(y)))).toBe(message(slowly(x).times(slowly(y))));
      expect(message(decimalOfCell(x).div(decimalOfCell(8)))).toBe(message(slowly(x).div(8)));
    }
  }
});

// What a spreadsheet shows of these doubles, by ECMA-262 Number.prototype.toPrecision(15).
test.each([
  [0.1 + 0.2, '0.3'],
  [27.449999999999996, '27.45'],
  [1 / 3, '0.333333333333333'],
  [123456789.123456789, '123456789.123457'],
  [-0, '0'],
  [1e15 + 1, '1000000000000000'],
  [5e-324, '4.94065645841247e-324'],
])('a cell that holds %p is the decimal %s', (value, text) => expect(decimalOfCell(value).toString()).toBe(text));

test('a number keeps the settings of this project: 40 digits, half up, in whatever it turns into', () => {
  expect(decimalOfCell(2).div(3).toString()).toBe(`0.${'6'.repeat(39)}7`);
  expect(decimalOfCell(2.5).toDecimalPlaces(0).toString()).toBe('3');
  expect(decimalOfCell(-2.5).toFixed(0)).toBe('-3');
  expect(decimalOfCell(2).sqrt().times(decimalOfCell(2).sqrt()).toFixed(38)).toBe(`2.${'0'.repeat(38)}`);
  expect(JSON.stringify([decimalOfCell(12.5)])).toBe('["12.5"]');
});
