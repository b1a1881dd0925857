import type { Cause } from './cause';
import type { CauseModels, CauseSet } from './causeModel';
import { BEAM, EXCHANGED, EXCHANGE_ROUNDS, MOST_CAUSES } from './causeRule';
import { mayJoin } from './causesTogether';
import { modelPool, type ModelPool, type RatedSet } from './modelPool';

/** What is searched: candidates, how good sets of them are, and how many dies there are. */
export interface Searched {
  readonly causes: readonly Cause[];
  readonly models: CauseModels;
  readonly dies: number;
}

const BETTER = 1e-9;

const withCause = (set: CauseSet, cause: number): CauseSet => [...set, cause].sort((a, b) => a - b);
/** What a cause is, whenever it begins. */
const nameOf = ({ kind, of }: Cause) => (kind === 'crimp' ? kind : `${kind} ${of}`);

function nameOfSet(set: CauseSet, names: readonly string[]): string {
  return set
    .map(cause => names[cause]!)
    .sort()
    .join();
}

/** The first few, one for each set of causes whatever their boundaries. */
function firstOfEach<T extends RatedSet>(sorted: readonly T[], names: readonly string[], most: number): T[] {
  const found = new Map<string, T>();
  for (const each of sorted) {
    if (found.size === most) break;
    const name = nameOfSet(each.causes, names);
    if (!found.has(name)) found.set(name, each);
  }
  return [...found.values()];
}

/** Visits every set that is one larger and worth a look: asked in this order, since most are not. */
function enlarge(
  { causes, models, dies }: Searched,
  set: CauseSet,
  isWorth: (cause: number, criterion: number) => boolean,
  visit: (cause: number, criterion: number) => void,
): void {
  const members = set.map(cause => causes[cause]!);
  models.additions(models.solve(set), (cause, criterion) => {
    if (!isWorth(cause, criterion) || set.includes(cause) || !mayJoin(causes[cause]!, members, dies)) return;
    visit(cause, criterion);
  });
}

/** The best enlargements of some sets, one for each set of causes. */
function nextBeam(searched: Searched, beam: readonly RatedSet[], pool: ModelPool, names: readonly string[]): RatedSet[] {
  const found: RatedSet[] = [];
  for (const { causes: set } of beam) {
    const bestOf = new Map<string, { cause: number; criterion: number }>();
    const isBest = (cause: number, criterion: number) => criterion < (bestOf.get(names[cause]!)?.criterion ?? Infinity);
    const isWorth = (cause: number, criterion: number) => pool.wants(criterion) || isBest(cause, criterion);
    enlarge(searched, set, isWorth, (cause, criterion) => {
      if (isBest(cause, criterion)) bestOf.set(names[cause]!, { cause, criterion });
      if (pool.wants(criterion)) pool.note(withCause(set, cause), criterion);
    });
    const inOrder = [...bestOf.values()].sort((a, b) => a.cause - b.cause);
    for (const { cause, criterion } of inOrder) found.push({ causes: withCause(set, cause), criterion });
  }
  found.sort((a, b) => a.criterion - b.criterion);
  return firstOfEach(found, names, BEAM);
}

/** One cause after the other, until two sizes were no better than the best. */
function build(searched: Searched, pool: ModelPool, names: readonly string[]): void {
  const { models } = searched;
  pool.note([], models.criterion(models.solve([])));
  let beam: RatedSet[] = [{ causes: [], criterion: pool.best }];
  for (let size = 0, worse = 0; size < MOST_CAUSES && worse < 2; size++) {
    const before = pool.best;
    beam = nextBeam(searched, beam, pool, names);
    worse = pool.best < before - BETTER ? 0 : worse + 1;
  }
}

/** Drops a cause of the best models, and adds any other in its place, as long as that makes the best one better. */
function exchange(searched: Searched, pool: ModelPool, names: readonly string[]): void {
  const { models } = searched;
  for (let round = 0; round < EXCHANGE_ROUNDS; round++) {
    const before = pool.best;
    for (const { causes: set } of firstOfEach(pool.sorted(), names, EXCHANGED)) {
      for (const dropped of set) {
        const rest = set.filter(cause => cause !== dropped);
        pool.note(rest, models.criterion(models.solve(rest)));
        const isWorth = (_: number, criterion: number) => pool.wants(criterion);
        enlarge(searched, rest, isWorth, (cause, criterion) => pool.note(withCause(rest, cause), criterion));
      }
    }
    if (pool.best >= before - BETTER) return;
  }
}

/** Step 6: the best sets of causes, and all that are nearly as good; best first. */
export function causeSearch(searched: Searched): RatedSet[] {
  const names = searched.causes.map(nameOf);
  const pool = modelPool();
  build(searched, pool, names);
  exchange(searched, pool, names);
  return pool.sorted();
}
