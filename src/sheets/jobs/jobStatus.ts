import { nameOfCell, type SheetCell } from '../../cells/sheetCell';

/** What a status cell says of a line. */
export type JobStatus = 'open' | 'planned' | 'done' | 'held';

const DONE_WORDS =
  'cut|crimped|tested|done|finished|complete|completed|made|ready|shipped|delivered|closed|yes|y|x|✓|✔|☑|true|ok|all (?:cut|done|made)';
/** What people write behind it: when, by whom, or nothing: `cut 5 Oct`, `done ✓`, `tested by RM`. */
const WHEN_OR_WHO =
  '[\\s,;:.!()/–-]+|✓|✔|\\d+(?:st|nd|rd|th)?|(?:on|by|at) (?:\\p{L}+)|(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?|(?:jan|feb|mar|apr|may|jun|jul|aug|sept?|oct|nov|dec)\\p{L}*|am|pm|today|already|and|(?:cut|crimped|tested|shipped|delivered)';
const DONE = new RegExp(`^(?:${DONE_WORDS})(?:${WHEN_OR_WHO})*$`, 'iu');
const DATE = /^\d{4}-\d\d-\d\d$|^\d{1,2}[./]\d{1,2}[./]\d{2,4}$/;
const PLANNED = /^(?:planned|on (?:the )?cut list|scheduled)$/i;
const HELD =
  /^(?:hold|on hold|held|cancel(?:l?ed)?|void|stopped|stop|waiting (?:for|on)|awaiting|do not make|scrapped)(?![\p{L}\d])/iu;
/** Some of it is done: how much is left nobody can tell from the word. */
const PARTLY = /^(?:part(?:ly|ially|ial)?|half|some|nearly|almost|\d+ (?:of|\/) \d+)(?![\p{L}\d])/iu;
/** Numbers from here on are days of the sheet. */
const FIRST_DAY = 20_000;

/** A tick as 1, a whole share as 1 or 100, or the day it was done; any other number counts pieces, or says how much of it is done. */
function statusOfNumber(value: number): JobStatus {
  if (value === 0) return 'open';
  return value === 1 || value === 100 || value >= FIRST_DAY ? 'done' : 'held';
}

/**
 * What a cell of a status column says. A date in it is the day the line was done; what is done in part is held, for nobody knows what is
 * left of it; words that are not known leave the line open, and so does `planned: 3 of 5`, of which the sheet Pieces tells the rest.
 */
export function jobStatus(cell: SheetCell): JobStatus {
  if (typeof cell === 'number') return statusOfNumber(cell);
  const text = nameOfCell(cell);
  if (DONE.test(text) || DATE.test(text)) return 'done';
  if (PLANNED.test(text)) return 'planned';
  return HELD.test(text) || PARTLY.test(text) ? 'held' : 'open';
}
