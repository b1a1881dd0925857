import type { RangeContent } from '../../host/workbook';
import { findTable, type HeadingPatterns, type SheetTable } from '../sheets/sheetTable';

/** Most readings of one crimp that a row may hold. */
const MOST = 8;
const NUMBERS = Array.from({ length: MOST }, (_, index) => index + 1);

const WORD = '(?:reading|caliper|calliper|measurement|measured|measure|gauge|diameter|dia\\.?|ø|m|r)s?';
const ONE_END = new RegExp(`^(?:${WORD} ?#?\\d{1,2}|\\d{1,3} ?(?:°|deg)|[ø#]\\d)$`);
const ofEnd = (end: 'a' | 'b') => new RegExp(`^(?:(?:end )?${end} ?(?:${WORD} ?)?#?\\d|${WORD} ?(?:end )?${end} ?\\d)$`);

/** What a row may say about its crimp; with `a` or `b` in the heading about that end only. */
const CRIMP_WORDS = {
  target: 'target|target diameter|crimp diameter|nominal|nominal diameter|specified|specified diameter|crimp to',
  tolerance: 'tolerance|tolerance ±|± tolerance|tol\\.?|\\+/-|±|crimp tolerance|allowed deviation',
  smallest: 'smallest|smallest diameter|lower limit',
  largest: 'largest|largest diameter|upper limit',
  maxSpread: 'largest spread|allowed spread|maximum spread|spread limit',
  die: 'die|die set|dies',
  dial: 'dial|dial set|dial used|dial setting|machine dial|setting',
  hoseLot: 'hose lot|lot of hose|hose batch',
  fittingLot: 'fitting lot|coupling lot|lot of fitting|fitting batch',
} as const;
export type CrimpField = keyof typeof CRIMP_WORDS;
export type CrimpKey = `${CrimpField}${'A' | 'B' | ''}`;

const ROW_HEADINGS = {
  fittingA: /^(?:(?:fitting|coupling|end|connection) a|a (?:fitting|coupling|end))$/,
  fittingB: /^(?:(?:fitting|coupling|end|connection) b|b (?:fitting|coupling|end))$/,
  fitting: /^(?:fitting|coupling|end fitting|connection)$/,
  hose: /^(?:hose|hose type|hose part)$/,
  combination: /^(?:combination|hose and (?:fitting|coupling))$/,
  end: /^(?:end|side|end a\/b)$/,
  line: /^(?:line|line no\.?|job line|job|item|pos\.?|position|no\.?|#)$/,
  assembly: /^(?:assembly|assembly no\.?|assembly number|serial|serial no\.?|tag|tag no\.?)$/,
  piece: /^(?:piece|piece no\.?)$/,
  order: /^(?:order|order no\.?|work order)$/,
  machine: /^(?:machine|crimper|press)$/,
  step: /^(?:step|change per digit|per digit|diameter per digit)$/,
  lowest: /^(?:lowest|lowest dial)$/,
  highest: /^(?:highest|highest dial)$/,
  largestMove: /^(?:largest move|most digits)$/,
  operator: /^(?:operator|made by|crimped by|who)$/,
  date: /^(?:date|day|made|crimped on)$/,
} as const;
export type RowField = keyof typeof ROW_HEADINGS;

type ReadingField = `${'r' | 'a' | 'b'}${number}`;
export type EntryField = RowField | CrimpKey | ReadingField;

const readingHeadings = Object.fromEntries(
  NUMBERS.flatMap(number => [
    [`r${number}`, ONE_END],
    [`a${number}`, ofEnd('a')],
    [`b${number}`, ofEnd('b')],
  ]),
) as Record<ReadingField, RegExp>;

const crimpHeadings = Object.fromEntries(
  (Object.keys(CRIMP_WORDS) as CrimpField[]).flatMap(field => [
    [`${field}A`, new RegExp(`^(?:(?:${CRIMP_WORDS[field]}) a|a (?:${CRIMP_WORDS[field]}))$`)],
    [`${field}B`, new RegExp(`^(?:(?:${CRIMP_WORDS[field]}) b|b (?:${CRIMP_WORDS[field]}))$`)],
    [field, new RegExp(`^(?:${CRIMP_WORDS[field]})$`)],
  ]),
) as Record<CrimpKey, RegExp>;

const HEADINGS = { ...readingHeadings, ...ROW_HEADINGS, ...crimpHeadings } as HeadingPatterns<EntryField>;

/** A table with columns for the readings of a crimp. */
export type EntryTable = SheetTable<EntryField>;

/** Which readings a row holds: of one crimp, or of both ends of an assembly. */
export type EndLetter = '' | 'A' | 'B';

/** Columns of the readings of an end, from left to right; [] where the table has none. */
export function readingColumns(table: EntryTable, end: EndLetter): readonly number[] {
  const letter = end === '' ? 'r' : (end.toLowerCase() as 'a' | 'b');
  return NUMBERS.flatMap(number => table.columns[`${letter}${number}`]?.index ?? []).sort((a, b) => a - b);
}

/** The ends that a row holds readings of: one crimp a row, or both ends side by side. */
export function endsOfRow(table: EntryTable): readonly EndLetter[] {
  return (['', 'A', 'B'] as const).filter(end => readingColumns(table, end).length >= 2);
}

/** The column of a crimp's field: the end's own, else the one for the whole row. */
export function crimpColumn(table: EntryTable, field: CrimpField, end: EndLetter): CrimpKey | undefined {
  return [`${field}${end}` as const, field].find(key => table.columns[key]);
}

/** The table whose rows take readings: at least two reading columns. */
export function entryTable(content: RangeContent | undefined, near?: number): EntryTable | undefined {
  return findTable(content, HEADINGS, ['r1', 'r2'], near) ?? findTable(content, HEADINGS, ['a1', 'a2'], near);
}
