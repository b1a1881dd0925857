// What a rule advises on a book of crimps, and how that compares with what was planted. Diameters in tolerances.
import { crimpCause } from '../src/core/quality/causes/crimpCause';
import { today, type TrialBook, type TrialTruth } from '../tests/cases/crimpCause/trial.mjs';
import { crimpsOf } from './plantedBooks';

/** Offsets said to be there now, by name; what is open is not touched. */
interface Said {
  readonly off: ReadonlyMap<string, number>;
  readonly open: ReadonlySet<string>;
}

export interface Advice {
  /** False: it cannot tell, and touches nothing. */
  readonly isSure: boolean;
  /** Offset of the machine to be corrected, 0 for none. */
  readonly machine: number;
  readonly combinations: Said;
  readonly dies: Said;
}

export type Outcome = 'right' | 'right, rows open' | 'wrong' | 'cannot tell';

const ACTION_SHARE = 0.5;
/** How far a correction may be from the truth, and how little a combination or die may be off that is said to be. */
const CLOSE = 0.25;
const LEAST = 0.35;
const NOTHING: Said = { off: new Map(), open: new Set() };

/** CRIMPCAUSE with dates and dies. */
export function byCause(book: TrialBook): Advice {
  const { machine, combinations, dies } = crimpCause({ crimps: crimpsOf(book), confidence: 0.95, actionShare: ACTION_SHARE });
  const open = (list: readonly { name: string; finding: string }[]) =>
    new Set(list.flatMap(({ name, finding }) => (finding === 'CANNOT TELL' ? [name] : [])));
  const off = (list: readonly { name: string; finding: string; offset: number | undefined }[], word: string) =>
    new Map(list.flatMap(({ name, finding, offset }) => (finding === word ? [[name, offset!] as const] : [])));
  return {
    isSure: machine.isSure,
    machine: machine.correction === 0 ? 0 : -machine.correction,
    combinations: { off: off(combinations, 'OWN SETTING'), open: machine.isSure ? open(combinations) : new Set() },
    dies: { off: off(dies, 'DIE'), open: machine.isSure ? open(dies) : new Set() },
  };
}

/** CRIMPCAUSE as it was before: one machine offset for ever, no dates, no dies. */
export function byFormerRule({ rows }: TrialBook): Advice {
  const { finding, m, own } = today(rows, 1);
  if (finding === 'NOT ENOUGH DATA') return { isSure: false, machine: 0, combinations: NOTHING, dies: NOTHING };
  return { isSure: true, machine: m, combinations: { off: new Map(own), open: new Set() }, dies: NOTHING };
}

/** Average everything and adjust the machine where the mean exceeds half the tolerance. */
export function byAverage({ rows }: TrialBook): Advice {
  const mean = rows.reduce((total, { d }) => total + d, 0) / rows.length;
  return { isSure: true, machine: Math.abs(mean) >= ACTION_SHARE ? mean : 0, combinations: NOTHING, dies: NOTHING };
}

function isMachineWrong({ machine }: Advice, truth: number): boolean {
  return machine === 0 ? Math.abs(truth) >= ACTION_SHARE : Math.abs(machine - truth) > CLOSE;
}

/** Something said that is not so, or something that matters not said. */
function isWrong({ off, open }: Said, truth: ReadonlyMap<string, number>): boolean {
  return [...new Set([...off.keys(), ...truth.keys()])].some(name => {
    if (open.has(name)) return false;
    const [said, is] = [off.get(name), truth.get(name) ?? 0];
    if (said === undefined) return Math.abs(is) >= ACTION_SHARE;
    return Math.abs(is) < LEAST || Math.sign(said) !== Math.sign(is);
  });
}

export function outcomeOf(advice: Advice, truth: TrialTruth): Outcome {
  if (!advice.isSure) return 'cannot tell';
  const { combinations, dies } = advice;
  if (isMachineWrong(advice, truth.m) || isWrong(combinations, truth.C) || isWrong(dies, truth.D)) return 'wrong';
  return combinations.open.size > 0 || dies.open.size > 0 ? 'right, rows open' : 'right';
}
