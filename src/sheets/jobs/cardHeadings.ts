import type { RangeContent } from '../../workbook/workbook';
import { JOB_WORDS } from '../table/jobWords';
import { findTable, type HeadingPatterns, type SheetTable } from '../table/sheetTable';

const LINE_HEADINGS = {
  cutLength: JOB_WORDS.cutLength,
  overall: JOB_WORDS.overall,
  hose: JOB_WORDS.hose,
  quantity: JOB_WORDS.quantity,
  fittingA: JOB_WORDS.fittingA,
  fittingB: JOB_WORDS.fittingB,
  line: JOB_WORDS.line,
  assembly: /^(?:assembly no\.?|assembly number|serial|serial no\.?|tag|tag no\.?)$/,
  order: /^(?:order|order no\.?|work order)$/,
  label: /^(?:label|wanted for|for|machine|description|mark|name)$/,
  shortest: JOB_WORDS.shortest,
  longest: JOB_WORDS.longest,
  bore: JOB_WORDS.bore,
  twist: /^(?:twist|twist angle|orientation|turn|angle between ends)$/,
  workingPressure: /^(?:working pressure|maximum working pressure|max\.? working pressure|pressure)$/,
  guard: /^(?:guard|guards|sleeve|sleeves|protection)$/,
  note: /^(?:note|notes|remark|remarks)$/,
} as const;
export type LineField = keyof typeof LINE_HEADINGS;

/** What a sheet may say about the crimp of an end: `die a`, `a die`, or `die` for both ends. */
const END_WORDS = {
  ferrule: 'ferrule',
  die: 'die|die set',
  dial: 'dial|dial setting|setting',
  diameter: 'crimp diameter|crimp|target|target diameter',
  tolerance: 'tolerance|crimp tolerance',
  crimpLength: 'crimp length',
  skiveOutside: 'skive outside|outside skive',
  skiveInside: 'skive inside|inside skive',
  insertionDepth: 'insertion depth|insertion|insertion mark',
  angle: 'angle|elbow angle',
} as const;
export type EndField = keyof typeof END_WORDS;
type EndKey = `${EndField}${'A' | 'B' | ''}`;

export type CardField = LineField | EndKey;

const endHeadings = Object.fromEntries(
  (Object.keys(END_WORDS) as EndField[]).flatMap(field => [
    [`${field}A`, new RegExp(`^(?:(?:${END_WORDS[field]}) a|a (?:${END_WORDS[field]}))$`)],
    [`${field}B`, new RegExp(`^(?:(?:${END_WORDS[field]}) b|b (?:${END_WORDS[field]}))$`)],
    [field, new RegExp(`^(?:${END_WORDS[field]})$`)],
  ]),
) as Record<EndKey, RegExp>;

const CARD_HEADINGS: HeadingPatterns<CardField> = { ...LINE_HEADINGS, ...endHeadings };

/** The job table that bench cards and tags are made from: it has at least a hose and a length. */
export function cardTable(content: RangeContent | undefined, near?: number): SheetTable<CardField> | undefined {
  return (
    findTable(content, CARD_HEADINGS, ['hose', 'cutLength'], near) ?? findTable(content, CARD_HEADINGS, ['hose', 'overall'], near)
  );
}

/** The column of an end's field: its own, else the one for both ends. */
export function endColumn(table: SheetTable<CardField>, field: EndField, end: 'A' | 'B'): EndKey | undefined {
  return [`${field}${end}` as const, field].find(key => table.columns[key]);
}
