import { HEADING_WORDS } from '../table/headingWords';
import type { RoleChoice } from '../table/columnsRead';
import type { RoleList } from '../table/tableColumns';
import { diameterRole, type MeasureRole } from '../table/measureRole';

/** What a column of crimps can be, whichever end it speaks of. */
export type CrimpField =
  | 'combination'
  | 'hose'
  | 'fitting'
  | 'hoseLot'
  | 'hoseMade'
  | 'fittingLot'
  | 'end'
  | 'crimper'
  | 'machine'
  | 'die'
  | 'dial'
  | 'date'
  | 'time'
  | 'order'
  | 'assembly'
  | 'piece'
  | 'line'
  | 'crimp'
  | 'operator'
  | 'target'
  | 'tolerance'
  | 'toleranceWidth'
  | 'smallest'
  | 'largest'
  | 'largestSpread'
  | 'step'
  | 'lowest'
  | 'highest'
  | 'largestMove'
  | 'readingNumber'
  | 'caliper'
  | 'gauge';

/** Fields of which each end may have a column of its own. */
export const CRIMP_END_FIELDS = [
  'fitting',
  'fittingLot',
  'die',
  'dial',
  'target',
  'tolerance',
  'toleranceWidth',
  'smallest',
  'largest',
  'largestSpread',
  'operator',
  'date',
  'time',
  'caliper',
  'gauge',
] as const satisfies readonly CrimpField[];
export type CrimpEndField = (typeof CRIMP_END_FIELDS)[number];

/** Columns of readings are numbered from 1; with both ends in a row those of end B have roles of their own. */
export type ReadingRole = `reading${number}` | `readingB${number}`;
export type CrimpRole = CrimpField | `${CrimpEndField}${'A' | 'B'}` | ReadingRole;

/** The surest words first. `Lowest` alone is a dial's limit, unless the table has no dial or the heading names a length. */
export const CRIMP_ROLES: RoleList<CrimpField> = [
  ['hoseLot', 'hoseLot'],
  ['hoseMade', 'hoseMade'],
  ['fittingLot', 'fittingLot'],
  ['combination', 'combination'],
  ['hose', 'hose'],
  ['fitting', 'fitting'],
  ['end', 'end'],
  ['crimper', 'crimper'],
  ['machine', 'machine'],
  ['die', 'die'],
  ['dial', 'dial'],
  ['time', 'time'],
  ['date', 'date'],
  ['order', 'order'],
  ['assembly', 'assembly'],
  ['piece', 'piece'],
  ['line', 'line'],
  ['crimp', 'crimp'],
  ['operator', 'operator'],
  ['target', 'target'],
  ['tolerance', 'tolerance'],
  ['toleranceWidth', 'toleranceWidth'],
  ['largestSpread', 'largestSpread'],
  ['lowest', 'lowest'],
  ['highest', 'highest'],
  ['smallest', 'smallest'],
  ['largest', 'largest'],
  ['step', 'step'],
  ['largestMove', 'largestMove'],
  ['readingNumber', 'readingNumber'],
  ['caliper', 'caliper'],
  ['gauge', 'measuredWith'],
];

const ENDS = ['A', 'B'] as const;

/** Roles that only a heading with an end, or a hand, gives: they have no words of their own. */
export const CRIMP_END_ROLES: RoleList<CrimpRole> = CRIMP_END_FIELDS.flatMap(field =>
  ENDS.map(end => [`${field}${end}`] as const),
);

/** What a hand calls a column of readings; with both ends in a row the plain one is end A's. */
const READING_CHOICES = { reading: 'Reading', readingB: 'Reading of end B' } as const;

/** What a column can be, as it is shown where somebody chooses. */
export const CRIMP_ROLE_CHOICES: readonly RoleChoice[] = [
  ...Object.entries(READING_CHOICES).map(([role, label]) => ({ role, label })),
  ...CRIMP_ROLES.map(([role, word]) => ({ role, label: HEADING_WORDS[word!].label })),
  ...CRIMP_END_FIELDS.flatMap(field =>
    ENDS.map(end => ({ role: `${field}${end}`, label: `${HEADING_WORDS[field].label} ${end}` })),
  ),
];

const LABELS: Partial<Record<CrimpField, string>> = {
  target: 'target',
  tolerance: 'tolerance',
  toleranceWidth: 'tolerance',
  smallest: 'smallest diameter',
  largest: 'largest diameter',
  largestSpread: 'largest spread',
  step: 'step',
};

/** What the numbers of these roles measure: all are diameters, or differences of them. */
export function crimpMeasures(roles: readonly CrimpRole[]): Readonly<Partial<Record<CrimpRole, MeasureRole>>> {
  return Object.fromEntries(
    roles.flatMap(role => {
      const field = (CRIMP_END_ROLES.some(([each]) => each === role) ? role.slice(0, -1) : role) as CrimpField;
      const label = isReadingRole(role) ? role.replace(/^readingB?/, 'reading ') : LABELS[field];
      if (label === undefined) return [];
      return [[role, field === 'tolerance' ? { ...diameterRole(label), eitherWay: true } : diameterRole(label)]];
    }),
  );
}

export const isReadingRole = (role: string): role is ReadingRole => /^readingB?\d+$/.test(role);
