import {
  ArrayValueObject,
  ErrorValueObject,
  NullValueObject,
  NumberValueObject,
  StringValueObject,
  type ErrorType,
} from '@univerjs/engine-formula';
import { CellError, createCustomFunctions, type AssociatedFunction } from '../../../src/preview/host/customFunctions';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';

const parameters = [
  { name: 'readings', type: 'any', dimensionality: 'matrix' },
  { name: 'spread', type: 'any', dimensionality: 'matrix', optional: true },
];
const range = (...rows: any[][]) =>
  ArrayValueObject.create({
    calculateValueList: rows,
    rowCount: rows.length,
    columnCount: rows[0]!.length,
    unitId: '',
    sheetId: '',
    row: 0,
    column: 0,
  });

/** Calls a function through the engine as a cell would; gives value and sentence. */
async function inCell(run: AssociatedFunction, variants: any[], file = {}) {
  const metadata = { functions: [{ id: 'X', name: 'X', parameters }], allowErrorForDataTypeAny: true, ...file };
  const [[Engine, name]] = hostFunctions(metadata, new Map([['X', run]])).engineFunctions as any;
  const result = new Engine(name).calculate(...variants);
  const value = result.isAsyncObject() ? await result.getValue() : result;
  const cells = value.isArray() ? value.getArrayValue() : [[value]];
  return cells.map((row: any[]) =>
    row.map(cell => (cell.getCustomData() ? `${cell.getValue()} ${cell.getCustomData().sentence}` : cell.getValue())),
  );
}

describe('arguments, as Excel shapes them by functions.json', () => {
  const seen = async (...variants: any[]) => {
    let came: unknown[] = [];
    await inCell((...args) => ((came = args), 1), variants);
    return came;
  };

  it('gives a single value as one row of one cell, and an omitted argument as null', async () => {
    expect((await seen(NumberValueObject.create(3))).slice(0, 2)).toEqual([[[3]], null]);
    expect((await seen(range([NumberValueObject.create(3)]), NullValueObject.create())).slice(0, 2)).toEqual([[[3]], null]);
  });

  it('gives text as text, even text of digits, and a blank cell as empty text, never 0', async () => {
    const cells = range([StringValueObject.create('007'), NullValueObject.create(), null]);
    expect((await seen(cells))[0]).toEqual([['007', '', '']]);
  });

  it('gives an error value as CustomFunctions.Error', async () => {
    const [readings] = await seen(range([ErrorValueObject.create('#DIV/0!' as ErrorType)]));
    expect(readings).toEqual([[new CellError('#DIV/0!')]]);
  });

  it('does not call the function with error values where functions.json does not ask for them', async () => {
    const run = jest.fn(() => 1);
    const cells = range([ErrorValueObject.create('#DIV/0!' as ErrorType)]);
    expect(await inCell(run, [cells], { allowErrorForDataTypeAny: false })).toEqual([['#DIV/0!']]);
    expect(run).not.toHaveBeenCalled();
  });

  it('gives the invocation last, where a cancelable function leaves its handler', async () => {
    const cancelled = jest.fn();
    const host = hostFunctions(
      { functions: [{ id: 'X', name: 'X', parameters }] },
      new Map([['X', (...args: any[]) => ((args[2].onCanceled = cancelled), new Promise(() => {}))]]),
    );
    const [[Engine, name]] = host.engineFunctions as any;
    new Engine(name).calculate(NumberValueObject.create(1));
    host.cancelRunning();
    expect(cancelled).toHaveBeenCalledTimes(1);
  });
});

describe('results, as Excel puts them into cells', () => {
  const one = [NumberValueObject.create(1)];

  it('spills a block, keeps text of digits as text, and awaits promises', async () => {
    const result = [
      [1, '12'],
      [true, ''],
    ];
    expect(await inCell(() => result, one)).toEqual(result);
    expect(await inCell(async () => result, one)).toEqual(result);
  });

  it('keeps the sentence of an error in its own cell, thrown or returned, now or later', async () => {
    const error = new CellError('#VALUE!', 'tolerance is blank; fill it in');
    const shown = '#VALUE! tolerance is blank; fill it in';
    expect(await inCell(() => [[5], [error]], one)).toEqual([[5], [shown]]);
    const throwing = () => {
      throw error;
    };
    expect(await inCell(throwing, one)).toEqual([[shown]]);
    expect(await inCell(() => Promise.reject(error), one)).toEqual([[shown]]);
  });

  it('shows sentences for #VALUE! and #N/A only, and returns no code that Excel would refuse', async () => {
    expect(await inCell(() => [[new CellError('#NUM!', 'lost'), new CellError('#REF!')]], one)).toEqual([['#NUM!', '#VALUE!']]);
  });

  it.each([
    [
      'a defect',
      () => {
        throw new TypeError('x is not a function');
      },
      '#VALUE! the function failed: x is not a function',
    ],
    ['Infinity', () => Infinity, '#NUM!'],
    ['rows of unequal length', () => [[1, 2], [3]], '#VALUE! the function gave rows of unequal length'],
    ['an empty block', () => [[]], '#VALUE! the function gave rows of unequal length'],
    ['an object', () => ({}), '#VALUE! the function gave a value that no cell can hold'],
  ])('gives an error value for %s', async (_, run, shown) => {
    expect(await inCell(run as AssociatedFunction, one)).toEqual([[shown]]);
  });
});

describe('our CustomFunctions object', () => {
  it('associates one function or several, by id without case', () => {
    const { global, functions } = createCustomFunctions();
    global.associate('cutlength', () => 1);
    global.associate({ NEXTDIAL: () => 2, CRIMPCHECK: () => 3 });
    expect([...functions.keys()]).toEqual(['CUTLENGTH', 'NEXTDIAL', 'CRIMPCHECK']);
    expect(() => global.associate('X')).toThrow('X is no function');
  });

  it('refuses functions.json that names a function which functions.js did not associate', () => {
    expect(() => hostFunctions({ functions: [{ id: 'X', name: 'X', parameters }] }, new Map())).toThrow('does not associate it');
  });
});
