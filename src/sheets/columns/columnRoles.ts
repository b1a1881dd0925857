import type { RoleChoice } from '../table/columnsRead';
import { HEADING_WORDS } from '../table/headingWords';
import type { RoleList } from '../table/tableColumns';
import { lengthRole, diameterRole, type MeasureRole } from '../table/measureRole';

/** Roles of which each end of a row has one: those of end B end in `B`. */
export type CrimpEndRole =
  'readings' | 'target' | 'tolerance' | 'toleranceWidth' | 'smallest' | 'largest' | 'largestSpread' | 'dial';

export type EndLetter = 'A' | 'B';

/** What a column of someone's table can be to our functions. */
export type Role =
  | CrimpEndRole
  | `${CrimpEndRole}B`
  | 'hose'
  | 'fittingA'
  | 'fittingB'
  | 'overall'
  | 'cutOffA'
  | 'cutOffB'
  | 'allowance'
  | 'quantity'
  | 'step'
  | 'crimper'
  | 'margin'
  | 'temperature'
  | 'fluid'
  | 'guard';

/** Roles of one column each, the surest words first. */
export const COLUMN_ROLES: RoleList<Exclude<Role, 'readings' | `${CrimpEndRole}B`>> = [
  ['cutOffA', 'cutOffA'],
  ['cutOffB', 'cutOffB'],
  ['fittingA', 'fittingA'],
  ['fittingB', 'fittingB'],
  ['hose', 'hose'],
  ['overall', 'overall'],
  ['allowance', 'allowance'],
  ['quantity', 'quantity'],
  ['target', 'target'],
  ['tolerance', 'tolerance'],
  ['dial', 'dial'],
  ['step', 'step'],
  ['crimper', 'crimper'],
  ['margin', 'margin'],
  ['temperature', 'temperature'],
  ['fluid', 'fluid'],
  ['guard', 'guard'],
];

/** Roles that a heading may name for end A alone. */
export const OF_END_A = ['target', 'tolerance', 'dial'] as const satisfies readonly Role[];

/** How a correction calls the readings: the word of the vocabulary. */
export const READING = 'reading';

/** How a correction calls the readings of end B, where both ends lie in a row. */
export const READING_B = 'readingB';

/** Columns of limits: the reader of crimps finds them, and they can be chosen by hand. */
const LIMITS = ['toleranceWidth', 'smallest', 'largest', 'largestSpread'] as const satisfies readonly CrimpEndRole[];

/** What the crimps of an end are judged by. */
export const JUDGED_BY = ['target', 'tolerance', ...LIMITS] as const satisfies readonly CrimpEndRole[];

/** Fields of a crimp that its verdict and its next dial go by. */
export const CRIMP_FIELDS = [...JUDGED_BY, 'dial'] as const satisfies readonly CrimpEndRole[];

/** The role of an end: with one crimp a row that of end A serves for it. */
export const roleOfEnd = <R extends CrimpEndRole>(role: R, end: EndLetter): R | `${R}B` => (end === 'B' ? `${role}B` : role);

/** What people call a role. */
export function roleLabel(role: Role): string {
  const ofB = (['readings', ...CRIMP_FIELDS] as const).find(each => role === `${each}B`);
  const plain = ofB ?? (role as Exclude<Role, `${CrimpEndRole}B`>);
  const { label } = HEADING_WORDS[plain === 'readings' ? READING : plain];
  return ofB ? `${label} B` : label;
}

/** What a column can be, as it is shown where somebody chooses. */
export const COLUMN_ROLE_CHOICES: readonly RoleChoice[] = [
  ...COLUMN_ROLES.map(([role]) => ({ role, label: roleLabel(role) })),
  ...LIMITS.map(role => ({ role, label: roleLabel(role) })),
  { role: READING, label: roleLabel('readings') },
  { role: READING_B, label: roleLabel('readingsB') },
  ...CRIMP_FIELDS.map(role => ({ role: `${role}B`, label: roleLabel(`${role}B`) })),
];

/** What the numbers of the columns measure. */
export const COLUMN_MEASURES: Readonly<Partial<Record<Role, MeasureRole>>> = {
  overall: lengthRole('overall length'),
  cutOffA: lengthRole('cut-off A'),
  cutOffB: lengthRole('cut-off B'),
  allowance: lengthRole('allowance'),
  readings: diameterRole('readings'),
  target: diameterRole('target'),
  tolerance: diameterRole('tolerance'),
  temperature: { quantity: 'temperature', group: 'other', label: 'temperature' },
};
