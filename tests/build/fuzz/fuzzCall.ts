import { cellsOf, treeTables } from '../../core/catalogue/treeCatalogue';
import { treeFluids } from '../../core/catalogue/treeFluids';
import { metadata } from '../excelCall';
import { listFunctions } from '../listFunctions';
import { lookupFunctions } from '../lookupFunctions';
import { rowFunctions } from '../rowFunctions';
import { likelyCell, pick, strangeCell, wholeBetween, type Uniform } from './cells';

type Parameter = (typeof metadata.functions)[number]['parameters'][number];
type Block = unknown[][];

/** A call as it is sent, and what is known of its rows. */
export interface FuzzCall {
  readonly id: string;
  readonly args: unknown[];
  /** Places of the arguments that are read row by row. */
  readonly byRow: readonly number[];
  /** Rows of the result, where the shapes of the arguments are those of the contract. */
  readonly height: number | undefined;
}

const BY_ROW = /\bone value or a column\b|\bone crimp a row\b/;
const fullTables = cellsOf({ ...treeTables, fluids: treeFluids });
const [hose, straight, elbow] = ['Alder DN 12', 'Alder cone straight DN 12', 'Alder cone elbow DN 12'];

/** Values that suit where no contract of tests/build tells them, by the parameter's name. */
const OTHERS: Readonly<Record<string, unknown>> = {
  hose,
  fitting: straight,
  fittingA: straight,
  fittingB: elbow,
  machine: 'Bench 1',
  part: hose,
  overall: 1200,
  quantity: 10,
  temperature: 60,
  fluid: 'mineral oil',
  guard: '',
  field: 'bend radius',
  bore: 20,
  pressure: 100,
  bendRadius: 340,
  coldest: -20,
  hottest: 60,
  vacuum: '',
  endForm: '24° cone',
  angle: 0,
  diameter: 21.9,
  pitch: 1.5,
  unit: 'mm',
  side: 'male',
};

/** Good rows of every argument of a function, by the parameter's name: a block of one row or more. */
function goodRows(id: string): Record<string, readonly (readonly unknown[])[]> {
  const row = rowFunctions.find(called => called.id === id);
  if (row)
    return Object.fromEntries(
      Object.entries(row.arguments).map(([name, message]) => [name, [[...('row' in message ? message.row : [message.whole])]]]),
    );
  const list = listFunctions.find(called => called.id === id);
  if (list) return { ...list.lists, ...Object.fromEntries(Object.entries(list.whole).map(([name, value]) => [name, [[value]]])) };
  const lookup = lookupFunctions.find(called => called.id === id);
  const names = metadata.functions.find(described => described.id === id)!.parameters.map(({ name }) => name);
  const message = lookup ? [undefined, ...lookup.rows, ...lookup.whole] : [];
  return Object.fromEntries(names.map((name, index) => [name, [[message[index] ?? OTHERS[name] ?? 1]]]));
}

const functions = metadata.functions.map(({ id, parameters }) => {
  const key = rowFunctions.find(called => called.id === id)?.key;
  const list = listFunctions.find(called => called.id === id);
  return {
    id,
    parameters,
    good: goodRows(id),
    isByRow: ({ name, description }: Parameter) => !list && (name === key || BY_ROW.test(description)),
    isList: ({ name }: Parameter) => name in (list?.lists ?? {}),
  };
});

/** A shape that no contract allows, made of a block that one does. */
function misshapen(uniform: Uniform, block: Block): unknown {
  return pick<() => unknown>(uniform, [
    () => [],
    () => [[]],
    () => block[0]![0],
    () => block.flat(),
    () => block.map((cells, row) => (row % 2 ? cells.slice(1) : [...cells, ...cells])),
    () => [...block, ...block, block[0]!],
    () => block.map(cells => [...cells, ...cells]),
    () => ({}),
    () => undefined,
  ])();
}

/** A catalogue's table with some cells, rows or columns changed; most of it stays valid. */
export function nearlyValid(uniform: Uniform, table: Block): Block {
  const changes: readonly (() => Block)[] = [
    () => table,
    () => table.map(cells => cells.map(cell => (uniform() < 0.02 ? strangeCell(uniform) : cell))),
    () => table.map((cells, row) => (row > 0 ? cells.map(cell => (uniform() < 0.1 ? likelyCell(uniform, cell) : cell)) : cells)),
    () => [...table, table[wholeBetween(uniform, 0, table.length - 1)]!, table[0]!.map(() => '')],
    () => table.filter((_, row) => row === 0 || uniform() < 0.8),
    () => table.map(cells => [...cells].reverse()),
  ];
  return pick(uniform, changes)();
}

/** A random call of the function at `place` of functions.json. */
export function fuzzCall(uniform: Uniform, place: number, handle: unknown): FuzzCall {
  const { id, parameters, good, isByRow, isList } = functions[place]!;
  const rows = pick(uniform, [1, 1, 2, 3, 5, 8]);
  // Most calls are nearly right: what is wrong with one cell hides behind many wrong ones.
  const share = pick(uniform, [0, 0.03, 0.03, 0.4]);
  const cell = (suits: unknown) => (uniform() < share ? strangeCell(uniform) : likelyCell(uniform, suits));
  let height: number | undefined = 1;
  const args = parameters.map(parameter => {
    const rowsOf = good[parameter.name]!;
    if (parameter.name === 'catalogue') return uniform() < 0.95 ? [[handle]] : [[strangeCell(uniform)]];
    if (id === 'CATALOGUE') {
      const table = fullTables[parameters.indexOf(parameter)];
      return table ? nearlyValid(uniform, table as Block) : null;
    }
    if (parameter.optional && uniform() < 0.3) return null;
    const long = isByRow(parameter) ? pick(uniform, [1, rows, rows, rows]) : isList(parameter) ? rowsOf.length : 1;
    const block = Array.from({ length: long }, (_, row) => rowsOf[row % rowsOf.length]!.map(cell));
    if (uniform() < 0.02) {
      height = undefined;
      return misshapen(uniform, block);
    }
    if (height !== undefined) height = Math.max(height, long);
    return block;
  });
  const byRow = parameters.flatMap((parameter, index) => (isByRow(parameter) ? [index] : []));
  return { id, args, byRow, height: byRow.length > 0 ? height : undefined };
}
