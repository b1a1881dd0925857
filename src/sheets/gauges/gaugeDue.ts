import { isoDate } from '../../core/units/sheetDate';
import { gaugeKey, gaugeOf, type Gauge } from './gauge';
import { monthsLater } from './monthsLater';
import { countedText } from '../../core/countedText';

/** Whether a gauge may be used on a day. */
export interface GaugeDue {
  readonly gauge: Gauge;
  /** Days until its check is due, below 0 = overdue; undefined where that cannot be said. */
  readonly dueIn: number | undefined;
  readonly isOverdue: boolean;
  readonly sentence: string;
}

/** 9999-12-31: an interval beyond it is none. */
const LAST_DAY = 2_958_465;

function dayByInterval({ checked, every }: Gauge): number | undefined {
  if (checked === undefined || every === undefined) return undefined;
  if ('months' in every) return every.months > 0 ? monthsLater(checked, every.months) : undefined;
  return every.days > 0 ? Math.floor(Math.floor(checked) + every.days) : undefined;
}

/** Day number of the next check: by its interval or as stated, the earlier one where both are; undefined where neither is. */
export function dueDay(gauge: Gauge): number | undefined {
  const days = [dayByInterval(gauge), gauge.due].filter((day): day is number => day !== undefined && day <= LAST_DAY);
  return days.length === 0 ? undefined : Math.floor(Math.min(...days));
}

/**
 * When the check of a gauge is due: on the day of its last check and so many days after it may still be used.
 * @param day number of the day
 */
export function gaugeDue(gauge: Gauge, day: number): GaugeDue {
  const { checked } = gauge;
  const unknown = (sentence: string): GaugeDue => ({ gauge, dueIn: undefined, isOverdue: true, sentence });
  if (checked === undefined) return unknown('no date of its last check: check it first');
  const due = dueDay(gauge);
  if (due === undefined) return unknown('no interval: write in how many days it is checked again');
  const last = Math.floor(checked);
  if (last > day) return unknown(`its check of ${isoDate(last)} lies ahead of ${isoDate(day)}`);
  const dueIn = due - Math.floor(day);
  const on = isoDate(due);
  if (dueIn < 0) return { gauge, dueIn, isOverdue: true, sentence: `overdue by ${countedText(-dueIn, 'day')}, since ${on}` };
  return {
    gauge,
    dueIn,
    isOverdue: false,
    sentence: dueIn === 0 ? 'due today' : `due in ${countedText(dueIn, 'day')}, on ${on}`,
  };
}

/** Whether a row says how a gauge is today: earlier checks of the same gauge do not. */
function isCurrent(gauge: Gauge, gauges: readonly Gauge[], day: number): boolean {
  const current = gaugeOf(gauges, gauge.name, day);
  return current === undefined || current === gauge || (gauge.checked !== undefined && gauge.checked > day + 1);
}

/** All gauges, the most urgent first; those of which nothing can be said before all others. */
export const dueList = (gauges: readonly Gauge[], day: number): readonly GaugeDue[] =>
  gauges
    .filter(gauge => isCurrent(gauge, gauges, day))
    .map(gauge => gaugeDue(gauge, day))
    .sort((a, b) => (a.dueIn ?? -Infinity) - (b.dueIn ?? -Infinity) || a.gauge.row - b.gauge.row);

/** What is said of a gauge that the workbook says nothing about. */
export const NOT_IN_GAUGES = 'not on sheet Gauges, no check of it is known';

/** Whether all that is known of a gauge is a check between its use and today: nobody knows whether it was due when it was used. */
const isCheckedLater = ({ checked }: Gauge, day: number, today: number) =>
  checked !== undefined && Math.floor(checked) > day && Math.floor(checked) <= today;

/**
 * Why a record must not be made with these gauges; [] where nothing speaks against it.
 * @param names as a piece or a record names them
 * @param day number of the day on which they were used
 * @param today number of the day of the record
 */
export function gaugeRefusals(gauges: readonly Gauge[], names: readonly string[], day: number, today = day): readonly string[] {
  return names
    .filter(name => name.trim() !== '')
    .flatMap(name => {
      const gauge = gaugeOf(gauges, name, day);
      const isTwice = gauges.some(each => gaugeKey(each.name) === gaugeKey(name));
      if (!gauge) return [`${name}: ${isTwice ? 'twice on sheet Gauges' : NOT_IN_GAUGES}`];
      const { isOverdue, sentence } = gaugeDue(gauge, day);
      return isOverdue && !isCheckedLater(gauge, day, today) ? [`${gauge.name}: ${sentence}`] : [];
    });
}

/** What a record says of gauges of which only a check after their use is known. */
export function laterChecks(gauges: readonly Gauge[], names: readonly string[], day: number, today: number): readonly string[] {
  return names.flatMap(name => {
    const gauge = gaugeOf(gauges, name, day);
    if (!gauge || !isCheckedLater(gauge, day, today)) return [];
    const [check, use] = [isoDate(Math.floor(gauge.checked!)), isoDate(Math.floor(day))];
    return [`${gauge.name}: its check of ${check} came after its use on ${use}: whether it was due then is not known`];
  });
}
