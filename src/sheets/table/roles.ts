import { either, JOB_WORDS } from './jobWords';

/** What a column of someone's table can be to our functions. */
export type Role =
  | 'hose'
  | 'fittingA'
  | 'fittingB'
  | 'overall'
  | 'cutOffA'
  | 'cutOffB'
  | 'allowance'
  | 'quantity'
  | 'readings'
  | 'target'
  | 'tolerance'
  | 'dial'
  | 'step'
  | 'machine'
  | 'margin';

interface RoleWords {
  readonly label: string;
  /** Headings in lower case, without brackets and units. */
  readonly words: RegExp;
}

const END_A = '(a|1|one|left|first|near)';
const END_B = '(b|2|two|right|second|far)';
const ONE_PART = /^(fitting|coupling|end fitting|end|insert|connector|termination)$/;
const CUT_OFF = '(cut[- ]?off|cutback|deduction|minus)';

/** The roles in the order in which headings are tried, with the words shown and the words known. */
export const ROLES: Readonly<Record<Role, RoleWords>> = {
  cutOffA: { label: 'Cut-off A', words: new RegExp(`^${CUT_OFF}( length)?( (at|of|for))?( (end|fitting|coupling))? ?${END_A}$`) },
  cutOffB: { label: 'Cut-off B', words: new RegExp(`^${CUT_OFF}( length)?( (at|of|for))?( (end|fitting|coupling))? ?${END_B}$`) },
  fittingA: { label: 'Fitting A', words: either(JOB_WORDS.fittingA, ONE_PART) },
  fittingB: { label: 'Fitting B', words: JOB_WORDS.fittingB },
  hose: { label: 'Hose', words: JOB_WORDS.hose },
  overall: { label: 'Overall length', words: either(JOB_WORDS.overall, /^length$/) },
  allowance: { label: 'Allowance', words: /^(allowance|extra|add|added length|length allowance)$/ },
  quantity: { label: 'Quantity', words: JOB_WORDS.quantity },
  target: {
    label: 'Target diameter',
    words:
      /^(target|target diameter|nominal|nominal diameter|specified|specified diameter|crimp diameter( a)?|crimp ?(ø|dia\.?|od)|spec)$/,
  },
  tolerance: {
    label: 'Tolerance',
    words: /^(tolerance( a)?|tol\.?|±|\+\/-|tolerance ±|± tolerance|plus\/minus|allowed deviation)$/,
  },
  dial: { label: 'Dial', words: /^(dial( a)?|dial (set|used|setting)|machine dial|setting|machine setting)$/ },
  step: { label: 'Change per digit', words: /^(step|change per digit|per digit|diameter per digit|digit step)$/ },
  machine: { label: 'Machine', words: /^(machine|crimper|press)$/ },
  margin: { label: 'Margin (a fraction)', words: /^(margin|target margin|margin on price)$/ },
  readings: {
    label: 'Readings',
    words:
      /^((reading|caliper|calliper|measurement|measured|measure|gauge|reads?|m|r|ø|d|dia\.?|diameter)s? ?#?\d{0,2}|\d{1,3} ?(°|deg))$/,
  },
};

/** All roles; the readings last, because they are a block. */
export const ROLE_NAMES = Object.keys(ROLES) as readonly Role[];

/** A heading as it is compared: lower case, without what stands in brackets, without colon. */
export function plainHeading(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[([][^)\]]*[)\]]/g, ' ')
    .replace(/[:*]/g, ' ')
    .replace(/\s*[,\n]\s*(mm|in|inch|inches|pcs)\s*$/, '')
    .replace(/\s+/g, ' ')
    .trim();
}

/** The role that a heading names; undefined where it names none of ours. */
export function roleOfHeading(heading: string): Role | undefined {
  const plain = plainHeading(heading);
  return plain === '' ? undefined : ROLE_NAMES.find(role => ROLES[role].words.test(plain));
}

/** Unit of length that a heading names in brackets, after a comma or in a line of its own. */
export function unitOfHeading(heading: string): 'mm' | 'in' | undefined {
  const unit = /[([,\n]\s*(mm|millimet\w*|in|inch|inches|″|")\.?\s*[)\]]?\s*$/i.exec(heading)?.[1]?.toLowerCase();
  return unit === undefined ? undefined : unit.startsWith('m') ? 'mm' : 'in';
}
