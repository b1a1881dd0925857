import type { FoundTable } from '../table/findTable';
import { plainHeading } from '../table/roles';

/** What a row may say besides what an analysis needs; `{end}` stands for an end that the heading may name. */
const EXTRA_WORDS = {
  lineNumber: 'line|line no\\.?|job line|pos\\.?|position',
  order: 'order|order no\\.?|work order',
  assembly: 'assembly|assembly no\\.?|assembly number|serial|serial no\\.?|tag|tag no\\.?',
  piece: 'piece|piece no\\.?',
  operator: 'operator|made by|crimped by|measured by|who',
  step: 'step|change per digit|per digit|diameter per digit',
  lowest: 'lowest|lowest dial',
  highest: 'highest|highest dial',
  largestMove: 'largest move',
  largestSpread: 'largest spread|allowed spread|spread limit',
  hoseLot: 'hose lot|lot of hose|hose batch',
  hoseMade: 'hose made|hose date|made of hose',
  fittingLot: '(?:fitting|coupling) lot|lot of (?:fitting|coupling)|(?:fitting|coupling) batch',
} as const;
export type ExtraField = keyof typeof EXTRA_WORDS;

/** Columns that were looked for, by table: a table has thousands of rows and one row of headings. */
const known = new WeakMap<FoundTable, Map<string, number | undefined>>();

/** True where the field is one of these, not a role of measurements. */
export function isExtra(field: string): field is ExtraField {
  return field in EXTRA_WORDS;
}

/** The column of a field, zero-based on the sheet: the end's own, else the one for the whole row; undefined where there is none. */
export function extraColumn(table: FoundTable, field: ExtraField, end: string): number | undefined {
  let columns = known.get(table);
  if (!columns) known.set(table, (columns = new Map()));
  const name = `${field} ${end}`;
  if (!columns.has(name)) columns.set(name, findColumn(table, field, end));
  return columns.get(name);
}

function findColumn({ headings, block }: FoundTable, field: ExtraField, end: string): number | undefined {
  const words = `(?:${EXTRA_WORDS[field]})`;
  const patterns = [...(end ? [new RegExp(`^(?:${words} ${end}|${end} ${words})$`, 'i')] : []), new RegExp(`^${words}$`, 'i')];
  for (const pattern of patterns) {
    const index = headings.findIndex(heading => pattern.test(plainHeading(heading)));
    if (index >= 0) return block.column + index;
  }
  return undefined;
}
