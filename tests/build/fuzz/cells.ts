import { CellError } from '../excelCall';

/** Random numbers from 0 up to 1. */
export type Uniform = () => number;

/** One of some choices. */
export const pick = <T>(uniform: Uniform, choices: readonly T[]): T => choices[Math.floor(uniform() * choices.length)]!;

/** A whole number between two, both included. */
export const wholeBetween = (uniform: Uniform, from: number, to: number): number =>
  from + Math.floor(uniform() * (to - from + 1));

const CODES =
  '#VALUE! #N/A #DIV/0! #NUM! #NULL! #REF! #NAME? #SPILL! #CALC! #BUSY! #FIELD! #CONNECT! #BLOCKED! #GETTING_DATA'.split(' ');

/** Cells that a host may send where a function waits for something else. */
const STRANGE: readonly ((uniform: Uniform) => unknown)[] = [
  uniform => pick(uniform, [null, undefined, '', '  ', 0, -0, true, false]),
  uniform =>
    pick(uniform, [
      1,
      -1,
      2,
      10,
      0.5,
      26,
      1e-9,
      1e-300,
      5e-324,
      36_526,
      45_000,
      73_050,
      1e9,
      1e9 + 1,
      1e15,
      2 ** 53,
      1e21,
      1e308,
      -1e308,
    ]),
  uniform => (uniform() - 0.5) * 10 ** wholeBetween(uniform, -12, 12),
  uniform => wholeBetween(uniform, -20, 200) / pick(uniform, [1, 2, 3, 8, 10, 100]),
  uniform =>
    pick(uniform, [
      'x',
      'seven',
      '12,5',
      ' 3/8 ',
      '1 1/2',
      '1-1/2',
      '1/2"',
      `4' 3 1/2"`,
      '1,250',
      '1e5',
      '0x10',
      '½',
      '12.5 mm',
      '−3',
      '1/0',
      '=A1',
      '-',
      "'",
      '2026-03-14',
      '08:30',
      '*',
      'Alder*',
    ]),
  uniform =>
    pick(uniform, [
      'mm',
      'in',
      'metric',
      'US',
      'male',
      'female',
      'DIN 20066',

      '__proto__',
      'constructor',
      'toString',
      '\u0000',
      '\ud800',
      'İ',
      '9'.repeat(400),
      'x'.repeat(32_767),
      `${' '.repeat(5000)}1`,
    ]),
  uniform => new CellError(pick(uniform, CODES), pick(uniform, [undefined, '', 'sent'])),
  uniform => ({ type: 'Error', basicType: 'Error', basicValue: pick(uniform, [...CODES, undefined]), errorType: 'Any' }),
  uniform => pick(uniform, [...CODES, '#N/A ', '#REF', '#']),
  uniform => ({ type: 'Empty', basicType: 'Empty', basicValue: pick(uniform, ['', 0]) }),
  () => ({ type: 'Entity', text: 'a place', basicType: 'Error', basicValue: '#VALUE!', properties: {} }),
  () => ({ type: 'LocalImage', basicType: 'Error', basicValue: '#VALUE!' }),
];

/** Cells that no host should send. */
const IMPOSSIBLE: readonly (() => unknown)[] = [
  () => NaN,
  () => Infinity,
  () => -Infinity,
  () => ({}),
  () => [],
  () => [[1]],
  () => ({ code: 7, message: {} }),
  () => ({ code: '#N/A', message: 5 }),
  () => ({ basicValue: { basicValue: { basicValue: 3 } } }),
  () => ({ type: 'Double' }),
  () => Object.create(null),
  () => 12n,
  () => Symbol('cell'),
  () => () => 1,
  () => new Date(0),
  () => new Error('not of the host'),
];

/** A cell that a function does not wait for. */
export const strangeCell = (uniform: Uniform): unknown =>
  uniform() < 0.08 ? pick(uniform, IMPOSSIBLE)() : pick(uniform, STRANGE)(uniform);

/** A number near to one that suits; a whole one mostly counts or names something, and stays. */
function near(uniform: Uniform, good: unknown): unknown {
  if (typeof good !== 'number' || uniform() > (Number.isInteger(good) ? 0.04 : 0.6)) return good;
  return Number((good * (0.97 + 0.06 * uniform())).toPrecision(5));
}

/** A cell much like one that suits: the same, near to it, as text, as a data type. */
export function likelyCell(uniform: Uniform, good: unknown): unknown {
  const cell = near(uniform, good);
  const dress = uniform();
  if (dress < 0.85) return cell;
  if (dress < 0.9)
    return typeof cell === 'number' ? String(cell).replace('.', pick(uniform, ['.', ','])) : ` ${String(cell).toUpperCase()} `;
  if (dress < 0.95)
    return { type: 'FormattedNumber', basicType: typeof cell === 'number' ? 'Double' : 'String', basicValue: cell };
  return typeof cell === 'number' ? cell * 1.1 - cell * 0.1 : cell;
}
