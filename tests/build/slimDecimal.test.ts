import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Decimal } from 'decimal.js';
import slimDecimal, { UNUSED_METHODS, UNUSED_NAMES, UNUSED_OF_CLASS, UNUSED_STATICS } from '../../scripts/rspack/slimDecimal.mjs';

const root = join(__dirname, '../..');
const whole = readFileSync(join(root, 'node_modules/decimal.js/decimal.mjs'), 'utf8');
const slim = slimDecimal(whole);

/** The class of a module's text. */
function classOf(source: string): typeof Decimal {
  return new Function(
    source.replace('export var Decimal', 'var Decimal').replace('export default Decimal;', 'return Decimal;'),
  )();
}

test('what is left out is a third of decimal.js or more', () => {
  expect(slim.length).toBeLessThan(0.67 * whole.length);
});

test('what is left reckons as before', () => {
  const Slim = classOf(slim);
  const values = ['0', '-1.005', '27.35', '1e-9', '123456789.987654321', '0.3333333333333333333', '2', '-40'];
  for (const a of values) {
    for (const b of values) {
      const message = (Class: typeof Decimal) => {
        const [x, y] = [new Class(a), new Class(b)];
        const sums = [x.plus(y), x.minus(y), x.times(y), x.div(y), x.abs().sqrt(), Class.sum(x, y), Class.max(x, y)];
        const rounded = [x.toDecimalPlaces(2), x.toSignificantDigits(3), x.toNearest(0.125), x.ceil(), x.floor(), x.toFixed(1)];
        return [...sums, ...rounded, x.toNumber(), x.cmp(y), x.isInteger()].map(String);
      };
      expect(message(Slim)).toEqual(message(Decimal));
    }
  }
});

test('π as the sources write it is what decimal.js has', () => {
  const written = /const PI = new Decimal\('([\d.]+)'\)/.exec(
    readFileSync(join(root, 'src/core/length/routeLength.ts'), 'utf8'),
  )![1];
  expect(written).toBe(Decimal.clone({ precision: 40 }).acos(-1).toString());
});

test('no source of the worksheet functions calls what is left out, but of Math', () => {
  const names = new Set([...Object.keys(UNUSED_METHODS), ...Object.values(UNUSED_METHODS), ...UNUSED_NAMES, ...UNUSED_STATICS]);
  const called = new RegExp(`(?<!\\bMath)\\.(${[...names].join('|')})\\(|\\bDecimal\\.(${UNUSED_OF_CLASS.join('|')})\\(`);
  const files = ['core', 'cells', 'functions', 'host'].flatMap(folder =>
    readdirSync(join(root, 'src', folder), { recursive: true, encoding: 'utf8' })
      .filter(name => name.endsWith('.ts'))
      .map(name => join(root, 'src', folder, name)),
  );
  expect(files.length).toBeGreaterThan(100);
  expect(files.filter(file => called.test(readFileSync(file, 'utf8')))).toEqual([]);
});
