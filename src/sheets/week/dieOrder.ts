/** A die to be loaded, and the settings it is used at: names of dials, "" = not known. */
export interface DieStop {
  readonly die: string;
  readonly dials: readonly string[];
}

/** A die of the order with its dials in the order of work. */
export type DieStep = DieStop;

/** Up to so many dies the best order is found for certain: 2¹² sets of dies, a few thousand steps each. */
export const EXACT_DIES = 12;

const isKnown = (dial: string) => dial !== '';

/** Dials first to last, beginning and ending where asked; those between as they come. */
function dialsBetween(dials: readonly string[], first: string | undefined, last: string | undefined): readonly string[] {
  const start = first === undefined ? [] : [first];
  const end = last === undefined || (last === first && dials.length === 1) ? [] : [last];
  const taken = [...start, ...end];
  return [...start, ...dials.filter(dial => !taken.includes(dial)), ...end];
}

/** Dials that a die and the next have in common: set once, they serve both. */
const shared = (a: DieStop, b: DieStop) => a.dials.filter(dial => isKnown(dial) && b.dials.includes(dial));

interface State {
  /** Dials carried over from die to die. */
  readonly carried: number;
  readonly previous: State | undefined;
  readonly die: number;
  /** Dial that this die is entered with; undefined: any. */
  readonly entry: string | undefined;
}

/** Whether a die that was entered with one dial can be left with another. */
const canLeave = ({ dials }: DieStop, entry: string | undefined, exit: string) =>
  dials.length === 1 ? entry === undefined || entry === exit : entry !== exit;

function stepsOf(stops: readonly DieStop[], last: State): readonly DieStep[] {
  const states: State[] = [];
  for (let state: State | undefined = last; state; state = state.previous) states.unshift(state);
  return states.map(({ die, entry }, index) => {
    const exit = states[index + 1]?.entry;
    return { die: stops[die]!.die, dials: dialsBetween(stops[die]!.dials, entry, exit) };
  });
}

const keyOf = ({ die, entry }: State) => `${die} ${entry ?? ''}`;

/** All ways to go on from a state to a die: on a dial that both have, or on any. */
function onwards(stops: readonly DieStop[], from: State, die: number): readonly State[] {
  const common = shared(stops[from.die]!, stops[die]!).filter(dial => canLeave(stops[from.die]!, from.entry, dial));
  const free: State = { carried: from.carried, previous: from, die, entry: undefined };
  return [...common.map(entry => ({ ...free, carried: from.carried + 1, entry })), free];
}

/** The order that carries most dials over from die to die, by all sets of dies; the first die may be given. */
function exactOrder(stops: readonly DieStop[], starts: readonly State[]): State {
  let layer = new Map<number, Map<string, State>>();
  const put = (into: typeof layer, mask: number, state: State) => {
    const states = into.get(mask) ?? new Map<string, State>();
    const before = states.get(keyOf(state));
    if (!before || state.carried > before.carried) states.set(keyOf(state), state);
    into.set(mask, states);
  };
  for (const start of starts) put(layer, 1 << start.die, start);
  for (let count = 1; count < stops.length; count += 1) {
    const next: typeof layer = new Map();
    for (const [mask, states] of layer) {
      for (const state of states.values()) {
        for (let die = 0; die < stops.length; die += 1) {
          if (mask & (1 << die)) continue;
          for (const state2 of onwards(stops, state, die)) put(next, mask | (1 << die), state2);
        }
      }
    }
    layer = next;
  }
  const ends = [...layer.values()].flatMap(states => [...states.values()]);
  return ends.reduce((best, state) => (state.carried > best.carried ? state : best));
}

/** For many dies: always to the first die that shares a dial, else to the next. */
function nearestOrder(stops: readonly DieStop[], start: State): State {
  let state = start;
  const left = new Set(stops.keys());
  left.delete(start.die);
  while (left.size > 0) {
    const ways = [...left].flatMap(die => onwards(stops, state, die));
    state = ways.reduce((best, way) => (way.carried > best.carried ? way : best));
    left.delete(state.die);
  }
  return state;
}

/**
 * The order of the dies: each is loaded once, the one in the machine first, and as many dials as can be are left as they are from one die
 * to the next. Certainly the fewest up to `EXACT_DIES` dies; a good order beyond. Ties: the order in which they came.
 * @param stops dies, each once
 * @param inMachine die and dial of the machine now; "" = not known
 */
export function dieOrder(
  stops: readonly DieStop[],
  inMachine: { readonly die: string; readonly dial: string },
): readonly DieStep[] {
  if (stops.length === 0) return [];
  const loaded = stops.findIndex(({ die }) => die.toLowerCase() === inMachine.die.trim().toLowerCase());
  const firsts = loaded >= 0 ? [loaded] : [...stops.keys()];
  const starts = firsts.flatMap((die): State[] => {
    const free = { carried: 0, previous: undefined, die, entry: undefined };
    const isSet = isKnown(inMachine.dial) && stops[die]!.dials.includes(inMachine.dial);
    return isSet ? [{ ...free, carried: 1, entry: inMachine.dial }, free] : [free];
  });
  if (stops.length <= EXACT_DIES) return stepsOf(stops, exactOrder(stops, starts));
  const found = starts.map(start => nearestOrder(stops, start));
  return stepsOf(
    stops,
    found.reduce((best, state) => (state.carried > best.carried ? state : best)),
  );
}
