import { CellError, excelCall, metadata } from './excelCall';
import { rowFunctions, type Argument, type RowFunction } from './rowFunctions';
import { processorTime } from '../processorTime';

const isRow = (argument: Argument) => 'row' in argument;
const goodRow = (argument: Argument) => ('row' in argument ? argument.row : [argument.whole]);
const named = ({ id }: RowFunction) => metadata.functions.find(described => described.id === id)!.parameters;
const isOptional = (called: RowFunction, name: string) =>
  named(called).find(parameter => parameter.name === name)!.optional === true;

/** Blocks of so many good rows; `change` replaces those of an argument. */
function blocks(called: RowFunction, height: number, change: Record<string, unknown[][] | null> = {}): (unknown[][] | null)[] {
  return Object.entries(called.arguments).map(([name, argument]) => {
    if (name in change) return change[name]!;
    const cells = [...goodRow(argument)];
    return isRow(argument) ? Array.from({ length: height }, () => cells) : [cells];
  });
}

/** Good rows of an argument with the row at `index` replaced by copies of one cell. */
function withCell(called: RowFunction, name: string, height: number, index: number, cell: unknown): unknown[][] {
  const good = [...goodRow(called.arguments[name]!)];
  return Array.from({ length: height }, (_, row) => (row === index ? good.map(() => cell) : good));
}

const everyArgument = rowFunctions.flatMap(called =>
  Object.keys(called.arguments).map(name => ({ called, id: called.id, name, isByRow: isRow(called.arguments[name]!) })),
);
const byRow = everyArgument.filter(({ isByRow }) => isByRow);
const whole = everyArgument.filter(({ isByRow }) => !isByRow);
const good = async (called: RowFunction) => (await excelCall(called.id, ...blocks(called, 1)))[0]!;

test('the contract is told for every argument, in the order of functions.json', () => {
  for (const called of rowFunctions) {
    expect(Object.keys(called.arguments)).toEqual(named(called).map(({ name }) => name));
  }
});

describe.each(rowFunctions)('$id', called => {
  test('gives one row a row, all alike for equal rows; 10,000 in one call, in good time', async () => {
    const one = await good(called);
    expect(one).toHaveLength(called.width);
    expect(one.every(cell => (typeof cell === 'number' && Number.isFinite(cell)) || /^[A-Z0-9 ]+$/.test(String(cell)))).toBe(
      true,
    );
    const spent = processorTime();
    const many = await excelCall(called.id, ...blocks(called, 10_000));
    expect(spent()).toBeLessThan(10_000);
    expect(many).toHaveLength(10_000);
    if (called.id !== 'RUNSIGNALS') expect(many.every(row => row.every((cell, index) => cell === one[index]))).toBe(true);
  });

  test('a row that is not filled in is blank in all its cells, whatever else stands in it', async () => {
    const blank = Array(called.width).fill('');
    for (const cell of [null, '', '  ', undefined]) {
      const rows = await excelCall(called.id, ...blocks(called, 3, { [called.key]: withCell(called, called.key, 3, 1, cell) }));
      expect([rows.length, rows[1]]).toEqual([3, blank]);
      expect(rows[0]).not.toEqual(blank);
    }
  });

  test('what is optional may be left out', async () => {
    const left = Object.keys(called.arguments).filter(name => isOptional(called, name));
    const rows = await excelCall(called.id, ...blocks(called, 2, Object.fromEntries(left.map(name => [name, null]))));
    expect(rows.flat().filter(cell => String(cell).startsWith('#'))).toEqual([]);
  });
});

describe.each(byRow)('$id, argument $name', ({ called, id, name }) => {
  const others = async (cell: unknown) => {
    const rows = await excelCall(id, ...blocks(called, 3, { [name]: withCell(called, name, 3, 1, cell) }));
    if (id !== 'RUNSIGNALS') expect([rows[0], rows[2]]).toEqual([await good(called), await good(called)]);
    expect(rows).toHaveLength(3);
    return rows[1]!;
  };

  test('a single value is stretched over the rows', async () => {
    const single = blocks(called, 1)[Object.keys(called.arguments).indexOf(name)]!;
    const stretched = await excelCall(id, ...blocks(called, 4, { [name]: single }));
    const height = byRow.filter(argument => argument.id === id).length > 1 ? 4 : 1;
    expect(stretched).toHaveLength(height);
    expect(stretched[height - 1]).toEqual(await good(called));
  });

  test('another height is an error of the whole that tells both', async () => {
    if (byRow.filter(argument => argument.id === id).length === 1) return expect(called.key).toBe(name);
    const two = withCell(called, name, 2, -1, null);
    expect(await excelCall(id, ...blocks(called, 3, { [name]: two }))).toEqual([
      [expect.stringMatching(/^#VALUE! .*\b[23] rows, .* has [23]: give columns of the same number of rows/)],
    ]);
  });

  test('text that is no number has an error in its own row that quotes it', async () => {
    expect(await others('seven')).toEqual(Array(called.width).fill(expect.stringMatching(/^#VALUE! .* is "seven": /)));
    expect(await others(true)).toEqual(Array(called.width).fill(expect.stringMatching(/^#VALUE! .* is TRUE: /)));
  });

  test('a number that arrives as text, or as a data type, is that number', async () => {
    const cells = goodRow(called.arguments[name]!);
    for (const dress of [
      (cell: unknown): unknown => ` ${String(cell)} `,
      (cell: unknown) => ({ type: 'FormattedNumber', basicType: 'Double', basicValue: cell, numberFormat: '0.0' }),
      (cell: unknown) => ({ type: 'String', basicType: 'String', basicValue: String(cell) }),
    ]) {
      expect(await excelCall(id, ...blocks(called, 1, { [name]: [cells.map(dress)] }))).toEqual([await good(called)]);
    }
  });

  test.each(['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NULL!', '#REF!', '#NAME?', '#SPILL!', '#BUSY!', '#GETTING_DATA'])(
    '%s stays in its row, however it arrives',
    async code => {
      const passes = ['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NULL!'].includes(code);
      const sentence = passes
        ? new RegExp(`^${code.replace(/[/?]/g, '\\$&')} `)
        : new RegExp(`^#N/A .*${code.replace(/[/?]/g, '\\$&')}`);
      for (const cell of [
        new CellError(code),
        { type: 'Error', basicType: 'Error', basicValue: code, errorType: 'Any' },
        { basicType: 'Error', basicValue: code },
        ` ${code} `,
      ]) {
        expect(await others(cell)).toEqual(Array(called.width).fill(expect.stringMatching(sentence)));
      }
    },
  );

  test('a blank is an error of its row that names what is missing, unless it may be left out', async () => {
    if (name === called.key) return expect(await others(null)).toEqual(Array(called.width).fill(''));
    const cells = await others(null);
    if (isOptional(called, name)) expect(cells.join()).not.toMatch('#');
    else expect(cells).toEqual(Array(called.width).fill(expect.stringMatching(/^#VALUE! .+ is blank: fill it in$/)));
  });
});

describe.each(whole)('$id, argument $name', ({ called, id, name }) => {
  test('several cells are refused', async () => {
    const value = goodRow(called.arguments[name]!)[0];
    expect(await excelCall(id, ...blocks(called, 3, { [name]: [[value], [value], [value]] }))).toEqual([
      [expect.stringMatching(/^#VALUE! .* came as 3 × 1 cells: /)],
    ]);
  });

  test('a blank is an error of the whole that names it, unless it may be left out', async () => {
    for (const cell of [null, '', ' ']) {
      const rows = await excelCall(id, ...blocks(called, 2, { [name]: [[cell]] }));
      if (isOptional(called, name)) expect(rows.flat().join()).not.toMatch('#');
      else expect(rows).toEqual([[expect.stringMatching(/^#VALUE! .+ is blank: fill it in$/)]]);
    }
  });

  test('an error that arrives is the answer, and text that says nothing is quoted', async () => {
    expect(await excelCall(id, ...blocks(called, 2, { [name]: [[new CellError('#DIV/0!')]] }))).toEqual([['#DIV/0! ']]);
    expect(await excelCall(id, ...blocks(called, 2, { [name]: [['seven']] }))).toEqual([
      [expect.stringMatching(/^#VALUE! .* is "seven": /)],
    ]);
  });
});
