import { processorTime } from '../../processorTime';
import { CellError } from '../excelCall';
import type { FuzzCall } from './fuzzCall';

type Functions = ReadonlyMap<string, (...args: unknown[]) => unknown>;

const CODES = new Set(['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NULL!']);
/** What a sentence says when a value of the program got into it. */
const LEAKS = /\bundefined\b|\[object|\bfunction\b.*\{|(?<!["*-])\b(?:NaN|Infinity)\b/;
const LONGEST_CELL = 32_767;
/** No call may take longer, whatever is sent. */
const MOST_SECONDS = 8;

/** A cell of a result as text; what no cell may be is thrown. */
function shown(cell: unknown): string {
  if (cell instanceof CellError) {
    if (!CODES.has(cell.code)) throw new Error(`the code ${cell.code} cannot be returned`);
    if (LEAKS.test(cell.message)) throw new Error(`a sentence says "${cell.message.slice(0, 200)}"`);
    return `${cell.code} ${cell.message}`;
  }
  if (typeof cell === 'number' && Number.isFinite(cell) && !Object.is(cell, -0)) return String(cell);
  if (typeof cell === 'boolean') return String(cell);
  if (typeof cell === 'string' && cell.length <= LONGEST_CELL && !/^(NaN|-?Infinity|undefined|null)$/.test(cell))
    return `"${cell}"`;
  throw new Error(`a cell is ${Object.is(cell, -0) ? '-0' : String(cell).slice(0, 100)}`);
}

/** Rows of a result as texts; an error of the whole call is a text. */
async function called(functions: Functions, id: string, args: readonly unknown[]): Promise<string[] | string> {
  try {
    const rows = (await functions.get(id)!(...args, {})) as unknown[][];
    if (!Array.isArray(rows) || rows.length === 0) throw new Error('the result is no block of cells');
    if (rows.some(row => !Array.isArray(row) || row.length !== rows[0]!.length || row.length === 0))
      throw new Error('the rows of the result are unequal');
    return rows.map(row => row.map(shown).join(' | '));
  } catch (error) {
    if (error instanceof CellError) return shown(error);
    throw error;
  }
}

function frozen<T>(value: T): T {
  if (value !== null && typeof value === 'object' && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}

const inOrder = (block: unknown, order: readonly number[]) =>
  Array.isArray(block) && block.length === order.length ? order.map(row => (block as unknown[])[row]) : block;

/**
 * Holds a call against what every worksheet function promises: cells and errors that a host can show, a row a row, rows that do not know of each
 * other, the same answer a second time, arguments untouched (they are frozen: to change one throws), an end in time.
 * @param order the rows in another order
 * @returns calls made, and whether there was an answer with a cell that is no error
 */
export async function holdContract(
  functions: Functions,
  call: FuzzCall,
  order: readonly number[],
): Promise<{ calls: number; isAnswered: boolean }> {
  const { id, byRow, height } = call;
  const args = frozen(call.args);
  const spent = processorTime();
  const answer = await called(functions, id, args);
  const seconds = spent() / 1000;
  if (seconds > MOST_SECONDS) throw new Error(`it took ${seconds} s`);
  const again = await called(functions, id, args);
  if (String(again) !== String(answer)) throw new Error(`a second call answers ${String(again)}, not ${String(answer)}`);
  const isAnswered = typeof answer !== 'string' && answer.some(row => !row.startsWith('#'));
  if (typeof answer === 'string' || height === undefined) return { calls: 2, isAnswered };
  if (answer.length !== height) throw new Error(`${height} rows went in, ${answer.length} came out`);
  // Signals on a run of values are about their order.
  if (id === 'RUNSIGNALS' || height === 1) return { calls: 2, isAnswered };
  const turned = args.map((block, index) => (byRow.includes(index) ? inOrder(block, order) : block));
  const expected = order.map(row => answer[row]).join('\n');
  const found = await called(functions, id, turned);
  if (String(typeof found === 'string' ? found : found.join('\n')) !== expected)
    throw new Error(`rows in the order ${String(order)} answer ${String(found)}, not ${expected}`);
  return { calls: 3, isAnswered };
}
