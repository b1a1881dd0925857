import type { RoleChoice } from '../table/columnsRead';
import { HEADING_WORDS } from '../table/headingWords';
import type { RoleList } from '../table/tableColumns';
import { lengthRole, diameterRole, type MeasureRole } from '../table/measureRole';

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
  | 'crimper'
  | 'margin'
  | 'temperature'
  | 'fluid'
  | 'guard';

/** Roles of one column each, the surest words first. */
export const COLUMN_ROLES: RoleList<Exclude<Role, 'readings'>> = [
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

/** What people call a role. */
export const roleLabel = (role: Role): string => HEADING_WORDS[role === 'readings' ? READING : role].label;

/** What a column can be, as it is shown where somebody chooses. */
export const COLUMN_ROLE_CHOICES: readonly RoleChoice[] = [
  ...COLUMN_ROLES.map(([role]) => ({ role, label: roleLabel(role) })),
  { role: READING, label: roleLabel('readings') },
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
