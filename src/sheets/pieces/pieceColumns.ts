import type { LengthUnit } from '../../core/units/lengthUnit';
import type { HeadingWord } from '../table/headingWords';
import type { RoleList } from '../table/tableColumns';
import { lengthRole, diameterRole, type MeasureRole } from '../table/measureRole';
import { DATE_FORMAT } from '../print/dateFormat';

/** Fields of one end, without the letter of the end. */
export type PieceEndField = 'fitting' | 'lot' | 'die' | 'dial' | 'target' | 'tolerance' | 'largestSpread' | 'verdict';
export type PieceEndLetter = 'A' | 'B';

/** Readings of one end that the sheet is written with. */
export const READINGS = 4;
/** Readings of one end that are looked for. */
export const MOST_READINGS = 8;

/** What a column of the sheet Pieces can be. */
export type PieceRole =
  (typeof PLAIN_ROLES)[number][0] | `${PieceEndField}${PieceEndLetter}` | `reading${number}${PieceEndLetter}`;

/** Columns that are no end's, the surest words first. */
export const PLAIN_ROLES = [
  ['piece', 'piece'],
  ['lengthVerdict', 'lengthVerdict'],
  ['finished', 'finishedLength'],
  ['cutLength', 'cutLength'],
  ['overall', 'overall'],
  ['shortest', 'shortest'],
  ['longest', 'longest'],
  ['order', 'order'],
  ['line', 'line'],
  ['label', 'label'],
  ['hose', 'hose'],
  ['ferruleLot', 'ferruleLot'],
  ['lot', 'lot', 'hoseLot'],
  ['reel', 'reel'],
  ['machine', 'machine', 'crimper'],
  ['testPressure', 'testPressure'],
  ['testedFor', 'testedFor'],
  ['testedAt', 'testedAt'],
  ['caliper', 'caliper'],
  ['gauge', 'gauge'],
  ['flushed', 'flushed'],
  ['capped', 'capped'],
  ['by', 'operator'],
  ['status', 'status'],
  ['date', 'date'],
  ['replaces', 'replaces'],
  ['useBy', 'useBy'],
  ['note', 'note'],
  ['largestSpread', 'largestSpread'],
] as const satisfies RoleList<string>;

/** Words of an end's columns, once the end is taken off: `Die A` → `Die`. */
export const END_WORDS: readonly (readonly [PieceEndField, ...HeadingWord[]])[] = [
  ['fitting', 'fitting'],
  ['lot', 'lot', 'fittingLot'],
  ['die', 'die'],
  ['dial', 'dial'],
  ['target', 'target'],
  ['tolerance', 'tolerance'],
  ['largestSpread', 'largestSpread'],
  ['verdict', 'verdict'],
];

export const ENDS = ['A', 'B'] as const;

/** Roles of the readings of an end: `reading1A` … */
export const readingRoles = (end: PieceEndLetter, count = READINGS): readonly PieceRole[] =>
  Array.from({ length: count }, (_, index): PieceRole => `reading${index + 1}${end}`);

const pressure = (label: string): MeasureRole => ({ quantity: 'pressure', group: 'other', label });

/** What the numbers of the sheet measure. */
export const PIECE_MEASURES: Readonly<Partial<Record<PieceRole, MeasureRole>>> = {
  cutLength: lengthRole('cut length'),
  largestSpread: diameterRole('largest spread'),
  overall: lengthRole('overall length'),
  shortest: lengthRole('shortest length'),
  longest: lengthRole('longest length'),
  finished: lengthRole('finished length'),
  testPressure: pressure('test pressure'),
  testedAt: pressure('pressure reached'),
  ...Object.fromEntries(
    ENDS.flatMap(end => [
      [`target${end}`, diameterRole(`target ${end}`)],
      [`tolerance${end}`, diameterRole(`tolerance ${end}`)],
      [`largestSpread${end}`, diameterRole(`largest spread ${end}`)],
      ...readingRoles(end, MOST_READINGS).map((role, index) => [role, diameterRole(`reading ${end}${index + 1}`)]),
    ]),
  ),
};

/** Units that a new sheet is written in. */
export interface PieceUnits {
  readonly length: LengthUnit;
  readonly pressure: string;
}

/** A column as a new sheet gets it. */
export interface PieceColumn {
  readonly role: PieceRole;
  readonly heading: string;
  /** Points. */
  readonly width: number;
  /** `@` for names and numbers of things, which a sheet would read as dates or numbers. */
  readonly format?: string | undefined;
}

const column = (role: PieceRole, heading: string, width: number, format?: string): PieceColumn => ({
  role,
  heading,
  width,
  format,
});
const named = (role: PieceRole, heading: string, width: number) => column(role, heading, width, '@');

function endColumns(end: PieceEndLetter, unit: LengthUnit): readonly PieceColumn[] {
  return [
    named(`die${end}`, `Die ${end}`, 44),
    column(`dial${end}`, `Dial ${end}`, 44),
    column(`target${end}`, `Target ${end} (${unit})`, 56),
    column(`tolerance${end}`, `Tolerance ${end} (${unit})`, 60),
    ...readingRoles(end).map((role, index) => column(role, `Reading ${end}${index + 1} (${unit})`, 60)),
    column(`verdict${end}`, `Verdict ${end}`, 66),
  ];
}

/** The columns of a new sheet, in order. */
export function pieceColumns({ length: unit, pressure: bar }: PieceUnits): readonly PieceColumn[] {
  return [
    named('piece', 'Piece', 80),
    named('line', 'Line', 40),
    named('label', 'Label', 110),
    named('order', 'Order', 70),
    named('hose', 'Hose', 100),
    named('lot', 'Lot', 60),
    named('reel', 'Reel', 60),
    column('cutLength', `Cut length (${unit})`, 60),
    column('overall', `Overall (${unit})`, 60),
    column('shortest', `Shortest (${unit})`, 60),
    column('longest', `Longest (${unit})`, 60),
    named('fittingA', 'Fitting A', 110),
    named('fittingB', 'Fitting B', 110),
    named('lotA', 'Lot A', 60),
    named('lotB', 'Lot B', 60),
    named('ferruleLot', 'Ferrule lot', 60),
    named('machine', 'Machine', 100),
    ...endColumns('A', unit),
    ...endColumns('B', unit),
    column('finished', `Finished length (${unit})`, 64),
    column('lengthVerdict', 'Length verdict', 66),
    column('testPressure', `Test pressure (${bar})`, 60),
    column('testedAt', `Tested at (${bar})`, 60),
    column('testedFor', 'Tested for (s)', 56),
    named('gauge', 'Gauge', 80),
    named('flushed', 'Flushed', 50),
    named('capped', 'Capped', 50),
    named('by', 'By', 60),
    column('date', 'Date', 70, DATE_FORMAT),
    named('status', 'Status', 60),
    named('replaces', 'Replaces', 80),
    named('useBy', 'Use by', 60),
    named('note', 'Note', 130),
  ];
}
