import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';

/** How often a gauge is checked: in days, or in months of the calendar. */
export type CheckInterval = { readonly days: number } | { readonly months: number };

const EVERY =
  /^(?:(?:every|each) )?(?:(\d+)[ -]?(days?|weeks?|wks?\.?|months?|mos?\.?|mths?\.?|years?|yrs?\.?)(?:ly)?|(half[ -]?year|day|week|month|quarter|year|annual)(?:ly)?)$/i;
const UNITS: readonly (readonly [RegExp, 'days' | 'months', number])[] = [
  [/^half/i, 'months', 6],
  [/^w/i, 'days', 7],
  [/^m/i, 'months', 1],
  [/^q/i, 'months', 3],
  [/^(?:y|annual)/i, 'months', 12],
];

function intervalOf(count: Decimal, word: string): CheckInterval {
  const [, unit = 'days', times = 1] = UNITS.find(([words]) => words.test(word)) ?? [];
  const number = count.times(times).toNumber();
  if (unit === 'days') return { days: number };
  if (!Number.isInteger(number))
    throw new TradeError('notANumber', 'interval', `is ${number} months`, 'enter whole months, or days');
  return { months: number };
}

/** `12 months`, `every 6 months`, `half yearly`: an interval with its unit in the cell; undefined where a text is none. */
export function intervalFromText(text: string): CheckInterval | undefined {
  const [, count, unit, word] = EVERY.exec(text.trim()) ?? [];
  return (word ?? unit) === undefined ? undefined : intervalOf(new Decimal(count ?? 1), (word ?? unit)!);
}

/**
 * A bare number of a column whose heading says weeks, months or years; else days.
 * @throws TradeError where months are not whole
 */
export const intervalUnder = (heading: string, count: Decimal): CheckInterval =>
  intervalOf(count, /week|month|year/i.exec(heading)?.[0] ?? 'days');
