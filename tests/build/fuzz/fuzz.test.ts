import { inspect } from 'node:util';
import { seededUniform } from '../../../bench/seededUniform';
import { cellsOf, treeTables } from '../../core/catalogue/treeCatalogue';
import { treeFluids } from '../../core/catalogue/treeFluids';
import { CellError, loadedFunctions, metadata } from '../excelCall';
import { holdContract } from './contract';
import { pick } from './cells';
import { fuzzCall, nearlyValid, type FuzzCall } from './fuzzCall';

/** `npm run bench -- fuzz` makes more, from another seed. */
const CALLS = Number(process.env.FUZZ_CALLS ?? 100_000);
const SEED = Number(process.env.FUZZ_SEED ?? 20261130);

/** Functions whose calls take long have fewer of them. */
const SHARE: Readonly<Record<string, number>> = { CUTPLAN: 0.05, CRIMPCAUSE: 0.1, CATALOGUE: 0.3 };

const functions = loadedFunctions();
const shares = metadata.functions.map(({ id }) => SHARE[id] ?? 1);
const each = CALLS / shares.reduce((sum, share) => sum + share, 0);
let made = 0;

const tables = cellsOf({ ...treeTables, fluids: treeFluids }) as (unknown[][] | null)[];

/** Handles of a good catalogue and of some that are mostly valid; the runtime keeps sixteen. */
async function loadedHandles(uniform: () => number): Promise<unknown[]> {
  const handles: unknown[] = [];
  for (let index = 0; handles.length < 12 && index < 100; index += 1) {
    const changed = index === 0 ? tables : tables.map(table => table && nearlyValid(uniform, table));
    try {
      const [[handle]] = (await functions.get('CATALOGUE')!(...changed, {})) as [[unknown]];
      handles.push(handle);
    } catch (error) {
      if (!(error instanceof CellError)) throw error;
    }
  }
  return handles;
}

function shuffled(uniform: () => number, length: number): number[] {
  return Array.from({ length }, (_, row) => ({ row, at: uniform() }))
    .sort((a, b) => a.at - b.at)
    .map(({ row }) => row);
}

const shownCall = ({ id, args }: FuzzCall) =>
  `${id}(${args.map(arg => inspect(arg, { depth: 6, breakLength: Infinity, maxStringLength: 60 })).join(', ')})`;

test.each(metadata.functions.map(({ id }, place) => ({ id, place })))(
  '$id keeps its contract whatever is sent',
  async ({ place }) => {
    const end = made + each * shares[place]!;
    const first = SEED + 1_000_003 * place;
    const [good, ...others] = await loadedHandles(seededUniform(SEED));
    let [calls, answered] = [0, 0];
    for (let index = 0; made < end; index += 1) {
      const uniform = seededUniform(first + index);
      const handle = uniform() < 0.7 ? good : pick(uniform, others);
      const call = fuzzCall(uniform, place, handle);
      try {
        const held = await holdContract(functions, call, shuffled(uniform, call.height ?? 1));
        made += held.calls;
        calls += 1;
        answered += held.isAnswered ? 1 : 0;
      } catch (error) {
        throw new Error(`call ${index} from FUZZ_SEED=${SEED}, ${shownCall(call)}: ${(error as Error).stack}`);
      }
    }
    // What only refuses is not tried.
    expect(answered / calls).toBeGreaterThan(0.15);
  },
  600_000,
);

test(`${CALLS} calls were made`, () => expect(made).toBeGreaterThanOrEqual(CALLS * 0.99));
