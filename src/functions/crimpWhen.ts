import { momentNumber, FIRST_DATE } from '../core/units/sheetDate';
import { number, type CellReader, type FilledCell } from '../cells/readers';

/** When a crimp was made: a number that grows with time, and the cell as it came. */
export interface When {
  readonly time: number;
  readonly shown: FilledCell;
}

const readNumber = number({
  marks: 'noLength',
  hint: 'enter a date, a time or a running number',
  like: '2026-03-14 08:30 or 17',
});
const TIME = /^(\d{1,2}):(\d{2})(?::(\d{2}))?$/;
/** A time of day as a share of the day; undefined for any other text. */
function timeOfDay(text: string): number | undefined {
  const [, hours, minutes, seconds = 0] = TIME.exec(text)?.map(part => Number(part ?? 0)) ?? [];
  if (hours === undefined || minutes === undefined || hours > 23 || minutes > 59) return undefined;
  return (hours * 3600 + minutes * 60 + seconds) / 86_400;
}

/** Reads a date, a time or a running number; as text, a date like 2026-03-14, with a time like 08:30 or without, or a time alone. */
export const readWhen: CellReader<When> = (cell, label) => {
  const time = typeof cell === 'string' ? (momentNumber(cell) ?? timeOfDay(cell.trim())) : undefined;
  if (time !== undefined) return { time, shown: cell };
  return { time: readNumber(cell, label).toNumber(), shown: cell };
};

/** Times by row; a 0 among dates is a blank that the host turned into 0. */
export function timesOf(whens: readonly (When | undefined)[]): (number | undefined)[] {
  const hasDates = whens.some(when => when && when.time >= FIRST_DATE);
  return whens.map(when => (when?.time === 0 && hasDates ? undefined : when?.time));
}
