import { plainHeading } from '../table/roles';
import { JOB_WORDS } from '../table/jobWords';

/** What a column of measurements can be. With both ends in a row the plain roles are end A's, those with B end B's. */
export type MeasurementRole =
  | 'combination'
  | 'hose'
  | 'fitting'
  | 'fittingB'
  | 'end'
  | 'machine'
  | 'die'
  | 'dieB'
  | 'dial'
  | 'dialB'
  | 'date'
  | 'line'
  | 'target'
  | 'targetB'
  | 'tolerance'
  | 'toleranceB'
  | 'smallest'
  | 'largest'
  | 'readings'
  | 'readingsB'
  | 'readingNumber';

/** Zero-based columns of the sheet by role; only the readings have several. */
export type MeasurementColumns = Readonly<Partial<Record<MeasurementRole, readonly number[]>>>;

/** How the readings lie: a crimp a row, both ends of an assembly in a row, or one reading a row. */
export type MeasurementLayout = 'row' | 'ends' | 'column';

export const LAYOUTS: Readonly<Record<MeasurementLayout, string>> = {
  row: 'One crimp a row',
  ends: 'Both ends in a row',
  column: 'One reading a row',
};

/** The layout that goes with the columns of readings: several of them hold a crimp a row. */
export function layoutWith(layout: MeasurementLayout, { readings = [] }: MeasurementColumns): MeasurementLayout {
  return layout === 'column' && readings.length > 1 ? 'row' : layout;
}

interface RoleWords {
  readonly label: string;
  /** Headings in lower case, without brackets, units and end; undefined for roles that only an end makes. */
  readonly words?: RegExp;
}

/** The roles in the order in which headings are tried. */
export const MEASUREMENT_ROLES: Readonly<Record<MeasurementRole, RoleWords>> = {
  combination: {
    label: 'Combination',
    words: /^(combination|hose (and|with|\+|&|\/) (fitting|coupling)|assembly type|set-?up)$/,
  },
  hose: { label: 'Hose', words: JOB_WORDS.hose },
  fitting: {
    label: 'Fitting',
    words: /^(fitting|coupling|end fitting|insert|connector|fitting (type|part|name)|coupling type)$/,
  },
  fittingB: { label: 'Fitting B' },
  end: { label: 'End', words: /^(end|side|which end)$/ },
  machine: { label: 'Machine', words: /^(machine|crimper|press|crimping machine)$/ },
  die: { label: 'Die', words: /^(die|dies|die set)$/ },
  dieB: { label: 'Die B' },
  dial: { label: 'Dial', words: /^(dial|dial (set|used|setting)|machine dial|setting|machine setting)$/ },
  dialB: { label: 'Dial B' },
  date: { label: 'Date', words: /^(date|day|made|made on|measured on|crimped on|date (made|measured|crimped))$/ },
  line: {
    label: 'Line or crimp no.',
    words: /^((line|job|crimp|assembly|serial|sample|piece|test)( no\.?| number)?|job line|no\.?|#|id)$/,
  },
  target: {
    label: 'Target diameter',
    words:
      /^((target|nominal|specified|required|wanted)( ?(diameter|ø|dia\.?|od|size|value))?|crimp ?(diameter|ø|dia\.?|od)|spec|set ?point)$/,
  },
  targetB: { label: 'Target B' },
  tolerance: { label: 'Tolerance', words: /^((± ?)?(tolerance|tol\.?)( ?(±|\+\/-))?|±|\+\/-|plus\/minus|allowed deviation)$/ },
  toleranceB: { label: 'Tolerance B' },
  smallest: {
    label: 'Smallest diameter',
    words: /^((smallest|min\.?|minimum|lowest|lower)( ?(diameter|ø|dia\.?|od|limit|allowed))?|low limit|lsl)$/,
  },
  largest: {
    label: 'Largest diameter',
    words: /^((largest|max\.?|maximum|highest|upper)( ?(diameter|ø|dia\.?|od|limit|allowed))?|high limit|usl)$/,
  },
  readingNumber: {
    label: 'Number of the reading',
    words: /^((reading|measurement) (no\.?|number)|position|pos\.?|angle|place|flat|point)$/,
  },
  readings: {
    label: 'Readings',
    words:
      /^((reading|caliper|calliper|measurement|measured|measured ?(diameter|ø|dia\.?|od|size|value)|actual|actual ?(diameter|ø|dia\.?|od|size)|measure|gauge|reads?|value|result)s? ?#?\d{0,2}|(m|r|x|ø|d|dia\.?|od|diameter) ?#?\d?|#? ?\d|0|45|90|135|\d{1,3} ?(°|deg))$/,
  },
  readingsB: { label: 'Readings B' },
};

export const ROLE_NAMES = Object.keys(MEASUREMENT_ROLES) as readonly MeasurementRole[];

/** Roles of end A and of end B. */
export const ROLES_OF_B = {
  fitting: 'fittingB',
  die: 'dieB',
  dial: 'dialB',
  target: 'targetB',
  tolerance: 'toleranceB',
  readings: 'readingsB',
} as const satisfies Partial<Record<MeasurementRole, MeasurementRole>>;

const END_WORDS: readonly (readonly [RegExp, 'A' | 'B'])[] = [
  [/[([]\s*(?:end )?a\s*[)\]]|^(?:end )?a[ :,-]+(?=\S)|(?<=\S)[ ,:-]+(?:end )?a$|(?<=\S) (?:at|of) end a$/i, 'A'],
  [/[([]\s*(?:end )?b\s*[)\]]|^(?:end )?b[ :,-]+(?=\S)|(?<=\S)[ ,:-]+(?:end )?b$|(?<=\S) (?:at|of) end b$/i, 'B'],
  [/(?<=^|\s)a ?(?=\d{1,2}$)/i, 'A'],
  [/(?<=^|\s)b ?(?=\d{1,2}$)/i, 'B'],
];

/** What a heading says: its role and, where it names one, the end. */
export interface NamedColumn {
  readonly role: MeasurementRole | undefined;
  readonly end: 'A' | 'B' | '';
}

/** Reads a heading; a unit in brackets does not matter. */
export function namedColumn(heading: string): NamedColumn {
  const plainRole = (words: string) => ROLE_NAMES.find(role => MEASUREMENT_ROLES[role].words?.test(plainHeading(words)));
  const withoutUnit = heading.replace(/[([]\s*(?:mm|in|inch|inches|"|digits?)\s*[)\]]/gi, '').trim();
  for (const [pattern, end] of END_WORDS) {
    if (!pattern.test(withoutUnit)) continue;
    const role = plainRole(withoutUnit.replace(pattern, ' '));
    // `End A` heads the names of couplings; a column `End` holds A and B.
    if (role) return { role: role === 'end' ? 'fitting' : role, end };
  }
  return { role: plainRole(withoutUnit), end: '' };
}
