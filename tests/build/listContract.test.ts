import { CellError, excelCall, metadata } from './excelCall';
import { col, listFunctions, type ListFunction } from './listFunctions';

const parametersOf = (id: string) => metadata.functions.find(described => described.id === id)!.parameters;

/** Calls with some arguments changed, in the order of functions.json. */
function call({ id, lists, whole }: ListFunction, change: Record<string, unknown> = {}): Promise<unknown[][]> {
  const given: Record<string, unknown> = { ...lists, ...whole, ...change };
  return excelCall(id, ...parametersOf(id).map(({ name }) => given[name]));
}

/** Every list with a row put in at `index`. */
function withRow({ lists }: ListFunction, index: number, cell: unknown): Record<string, unknown[][]> {
  const put = (rows: readonly (readonly unknown[])[]) => [
    ...rows.slice(0, index),
    rows[0]!.map(() => cell),
    ...rows.slice(index),
  ];
  return Object.fromEntries(Object.entries(lists).map(([name, rows]) => [name, put(rows) as unknown[][]]));
}

const everyList = listFunctions.flatMap(called => Object.keys(called.lists).map(name => ({ called, id: called.id, name })));
const everyWhole = listFunctions.flatMap(called => Object.keys(called.whole).map(name => ({ called, id: called.id, name })));

describe.each(listFunctions)('$id', called => {
  test('answers with its heading, with plain values only', async () => {
    const rows = await call(called);
    expect(rows[0]).toEqual(called.header);
    expect(rows.flat().every(cell => typeof cell === 'string' || Number.isFinite(cell))).toBe(true);
    expect(rows.flat().filter(cell => String(cell).startsWith('#'))).toEqual([]);
  });

  test('rows that are wholly blank are skipped, also where a host delivers them as zeros', async () => {
    const plain = await call(called);
    for (const blank of [null, '', '  ', 0]) {
      for (const index of [0, 1, Object.values(called.lists)[0]!.length]) {
        expect(await call(called, withRow(called, index, blank))).toEqual(plain);
      }
    }
  });

  test('every argument that is optional may be left out', async () => {
    const left = parametersOf(called.id).filter(({ optional }) => optional);
    const rows = await call(called, Object.fromEntries(left.map(({ name }) => [name, null])));
    expect(rows.flat().filter(cell => String(cell).startsWith('#'))).toEqual([]);
  });
});

describe.each(everyList)('$id, list $name', ({ called, name }) => {
  const change = (cell: unknown) => {
    const rows = called.lists[name]!;
    return { [name]: rows.map((row, index) => (index === 1 ? [cell, ...row.slice(1)] : row)) };
  };

  test('the first error that came in is the answer, however it arrives', async () => {
    expect(await call(called, change(new CellError('#DIV/0!', 'sent')))).toEqual([['#DIV/0! sent']]);
    expect(await call(called, change({ type: 'Error', basicType: 'Error', basicValue: '#N/A' }))).toEqual([['#N/A ']]);
    expect(await call(called, change({ type: 'Error', basicType: 'Error', basicValue: '#REF!' }))).toEqual([
      [expect.stringMatching(/^#N\/A .* holds #REF!: correct that cell first$/)],
    ]);
  });

  test('numbers that arrive as text or as data types are taken', async () => {
    const dressed = (dress: (cell: unknown) => unknown) => ({ [name]: called.lists[name]!.map(row => row.map(dress)) });
    const plain = await call(called);
    const numbers = (rows: unknown[][]) => rows.map(row => row.map(cell => (Number.isNaN(Number(cell)) ? cell : Number(cell))));
    expect(
      numbers(
        await call(
          called,
          dressed(cell => ` ${String(cell)} `),
        ),
      ),
    ).toEqual(numbers(plain));
    expect(
      await call(
        called,
        dressed(basicValue => ({ type: 'FormattedNumber', basicType: 'Double', basicValue })),
      ),
    ).toEqual(plain);
  });

  test('another height is refused', async () => {
    const others = Object.keys(called.lists).length;
    if (others === 1) return expect(everyList.filter(({ id }) => id === called.id)).toHaveLength(1);
    const longer = [...called.lists[name]!, called.lists[name]![0]!, called.lists[name]![0]!];
    expect(await call(called, { [name]: longer })).toEqual([[expect.stringMatching(/^#VALUE! .*\b\d+\b.* rows.*\d+/)]]);
  });
});

describe.each(everyWhole)('$id, argument $name', ({ called, name }) => {
  const takesList =
    ['stockLengths', 'stockQuantities', 'straights'].includes(name) || `${called.id} ${name}` === 'CRIMPCAUSE tolerance';

  test('several cells are refused where one value is meant', async () => {
    const value = called.whole[name];
    const rows = await call(called, { [name]: col(value, value) });
    if (takesList) return expect(rows[0]!.join()).not.toMatch(/2 × 1 cells/);
    expect(rows).toEqual([[expect.stringMatching(/^#VALUE! .* came as 2 × 1 cells: /)]]);
  });

  test('an error that arrives is the answer; text that says nothing is quoted', async () => {
    expect(await call(called, { [name]: new CellError('#NUM!') })).toEqual([['#NUM! ']]);
    expect(await call(called, { [name]: 'seven' })).toEqual([[expect.stringMatching(/^#VALUE! .* is "seven": /)]]);
  });

  test('a blank is an error that names it, unless blank means something', async () => {
    const { optional } = parametersOf(called.id).find(parameter => parameter.name === name)!;
    const meansSomething = optional || ['stockQuantities', 'lower', 'upper'].includes(name);
    const rows = await call(called, { [name]: '' });
    if (meansSomething) expect(rows.flat().join()).not.toMatch('#');
    else expect(rows).toEqual([[expect.stringMatching(/^#VALUE! .+ (is|are) blank: fill/)]]);
  });
});
