import { nameOfCell, type SheetCell } from '../../cells/sheetCell';

/** What a status cell says of a line. */
export type JobStatus = 'open' | 'planned' | 'done' | 'held';

const DONE =
  /^(?:cut|crimped|tested|done|finished|complete|completed|made|ready|shipped|delivered|closed|yes|y|x|✓|✔|☑|true|ok|all (?:cut|done|made))$/i;
const PLANNED = /^(?:planned|on (?:the )?cut list|scheduled)$/i;
const HELD = /^(?:hold|on hold|held|cancel(?:l?ed)?|void|stopped|stop|waiting for (?:parts|material)|do not make|scrapped)$/i;

/**
 * What a cell of a status column says. A date in it is the day the line was done; words that are not known leave the line open.
 */
export function jobStatus(cell: SheetCell): JobStatus {
  if (typeof cell === 'number') return cell >= 1 ? 'done' : 'open';
  const text = nameOfCell(cell);
  if (DONE.test(text) || /^\d{4}-\d\d-\d\d$|^\d{1,2}[./]\d{1,2}[./]\d{2,4}$/.test(text)) return 'done';
  if (PLANNED.test(text)) return 'planned';
  return HELD.test(text) ? 'held' : 'open';
}
