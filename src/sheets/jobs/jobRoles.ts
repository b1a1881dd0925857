import { roleChoices, type RoleChoice } from '../table/columnsRead';
import { headingForms } from '../table/heading';
import { HEADING_WORDS } from '../table/headingWords';
import type { RoleList } from '../table/tableColumns';
import { lengthRole, diameterRole, type MeasureRole } from '../table/measureRole';

/** Roles of what a job sheet may say of the crimp of an end: `…A`, `…B`, or one column for both. */
const JOB_END_FIELDS = [
  'ferrule',
  'die',
  'dial',
  'target',
  'tolerance',
  'smallest',
  'largest',
  'crimpLength',
  'skiveOutside',
  'skiveInside',
  'insertionDepth',
  'angle',
] as const;
export type JobEndField = (typeof JOB_END_FIELDS)[number];
export type EndRole = `${JobEndField}${'A' | 'B' | ''}`;

/** What a column of a job sheet can be. */
export type JobRole =
  | 'hose'
  | 'fittingA'
  | 'fittingB'
  | 'overall'
  | 'cutLength'
  | 'cutOffA'
  | 'cutOffB'
  | 'allowance'
  | 'quantity'
  | 'line'
  | 'label'
  | 'assembly'
  | 'order'
  | 'due'
  | 'status'
  | 'shortestLength'
  | 'longestLength'
  | 'bore'
  | 'twist'
  | 'pressure'
  | 'temperature'
  | 'fluid'
  | 'guard'
  | 'note'
  | 'check'
  | 'crimper'
  | 'customer'
  | EndRole;

/** Roles of a job sheet, the surest words first; those of the ends are found apart (see endColumns). */
export const JOB_ROLES: RoleList<JobRole> = [
  ['cutOffA', 'cutOffA'],
  ['cutOffB', 'cutOffB'],
  ['fittingA', 'fittingA'],
  ['fittingB', 'fittingB'],
  ['hose', 'hose'],
  ['overall', 'overall'],
  ['cutLength', 'cutLength'],
  ['allowance', 'allowance'],
  ['quantity', 'quantity'],
  ['order', 'order'],
  ['line', 'line'],
  ['assembly', 'assembly'],
  ['label', 'label'],
  ['due', 'due'],
  ['status', 'status'],
  ['shortestLength', 'shortest'],
  ['longestLength', 'longest'],
  ['bore', 'bore'],
  ['twist', 'twist'],
  ['pressure', 'pressure'],
  ['temperature', 'temperature'],
  ['fluid', 'fluid'],
  ['guard', 'guard'],
  ['note', 'note'],
  ['check', 'check'],
  ['crimper', 'crimper'],
  ['customer', 'customer'],
];

/** The same for both ends where the heading names none. */
export const JOB_END_ROLES: RoleList<JobEndField> = JOB_END_FIELDS.map(field => [field, field] as const);

const ENDS = ['A', 'B', ''] as const;

/** True for the role of a column that says something of a crimp. */
export const isEndRole = (role: string): role is EndRole =>
  JOB_END_FIELDS.some(field => ENDS.some(end => role === `${field}${end}`));

/** What a column of a job sheet can be, as it is shown where somebody chooses. */
export const JOB_ROLE_CHOICES: readonly RoleChoice[] = [
  ...roleChoices(JOB_ROLES),
  ...roleChoices(JOB_END_ROLES).flatMap(({ role, label }) =>
    ENDS.map(end => ({ role: `${role}${end}`, label: `${label} ${end}`.trim() })),
  ),
];

/** Measures of an end, without its letter. */
const END_MEASURES: Readonly<Partial<Record<JobEndField, MeasureRole>>> = {
  target: diameterRole('crimp diameter'),
  tolerance: { ...diameterRole('tolerance'), eitherWay: true },
  smallest: diameterRole('smallest diameter'),
  largest: diameterRole('largest diameter'),
  crimpLength: diameterRole('crimp length'),
  skiveOutside: diameterRole('skive outside'),
  skiveInside: diameterRole('skive inside'),
  insertionDepth: diameterRole('insertion depth'),
};

/** What the numbers of a job sheet measure. */
export const JOB_MEASURES: Readonly<Partial<Record<JobRole, MeasureRole>>> = {
  overall: lengthRole('overall length'),
  cutLength: lengthRole('cut length'),
  cutOffA: lengthRole('cut-off A'),
  cutOffB: lengthRole('cut-off B'),
  allowance: lengthRole('allowance'),
  shortestLength: lengthRole('shortest length'),
  longestLength: lengthRole('longest length'),
  bore: diameterRole('bore'),
  pressure: { quantity: 'pressure', group: 'other', label: 'working pressure' },
  temperature: { quantity: 'temperature', group: 'other', label: 'temperature' },
  ...Object.fromEntries(
    Object.entries(END_MEASURES).flatMap(([field, measure]) =>
      ['', 'A', 'B'].map(end => [`${field}${end}`, { ...measure, label: end ? `${measure.label} ${end}` : measure.label }]),
    ),
  ),
};

/** True where a heading says overall length, not just length. */
export const isOverallByName = (heading: string): boolean =>
  headingForms(heading).some(form => HEADING_WORDS.overall.exact.test(form));
