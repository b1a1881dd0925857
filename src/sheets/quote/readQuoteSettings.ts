import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { asSentence } from '../../core/asSentence';
import { numberTyped, type TypedRules } from '../../cells/typedNumber';
import { decimalsOf, isAmountFormat, PLAIN_MONEY } from '../catalogue/currencyFormat';
import type { CustomerClass } from './marginTable';
import type { QuoteFieldsText, NumberField, Mistakes, QuoteSettings } from './quoteSettings';

const SHARE: TypedRules = { share: true, blank: 'enter a share like 40 % or 0.4' };
const readShare = (text: string, label: string): number => numberTyped(text, label, SHARE)!.toNumber();

function readMargin(text: string): number {
  const margin = readShare(text, 'margin');
  if (margin < 1) return margin;
  throw new TradeError('range', 'margin', `is ${text.trim()}`, 'a margin is a share of the price and lies below 100 %');
}

const BREAKS: TypedRules = {
  sign: 'positive',
  marks: 'noLength',
  hint: 'enter quantities',
  like: '1, 10, 50',
  whole: 'enter whole numbers',
};

/** `1,250` may be one quantity or two, and `1.000` a thousand. */
const OPEN_MARK = /\d[.,]\d{3}(?!\d)/;

function readBreaks(text: string): number[] {
  if (OPEN_MARK.test(text)) {
    const advice = 'write thousands without a mark, and a space behind each comma, like 1, 250, 1000';
    throw new TradeError('range', 'quantity breaks', `are ${text.trim()}`, advice);
  }
  const parts = text.split(/[,;/\s]+/).filter(Boolean);
  const breaks = parts.map(part => numberTyped(part, 'quantity break', BREAKS)!.toNumber());
  if (breaks.length > 6) throw new TradeError('range', 'quantity breaks', `are ${breaks.length}`, 'six fit on a page');
  return [...new Set(breaks)].sort((a, b) => a - b);
}

const money = (text: string, label: string, sign: 'positive' | 'notNegative', blank?: string) =>
  numberTyped(text, label, {
    sign,
    marks: 'noLength',
    hint: 'enter an amount without currency',
    like: '12.50',
    blank,
  })?.toNumber();

/** The field's own words. */
const ROUND_TO = '“Round prices up to”';

/** The rounding step must show in the format, or the printed numbers would not add up. */
function readRoundTo(text: string, format: string): number {
  const step = money(text, ROUND_TO, 'positive', 'enter the smallest step of a price, like 0.01 or 0.5')!;
  const needed = new Decimal(step).decimalPlaces();
  const shown = decimalsOf(format);
  if (needed <= shown) return step;
  const advice = `the number format ${format} shows ${shown} decimals: take a coarser step or a finer format`;
  throw new TradeError('range', ROUND_TO, `is ${step}`, advice);
}

/** A format that shows amounts; the spreadsheet refuses others, or shows something else than the price. */
function checkedFormat(text: string): string {
  if (isAmountFormat(text)) return text;
  throw new TradeError('range', 'currency format', `is ${text}`, 'enter a number format with digits, like #,##0.00 "€"');
}

const DAYS: TypedRules = {
  sign: 'positive',
  marks: 'noLength',
  hint: 'enter a whole number of days',
  like: '30',
  whole: 'enter a whole number of days',
  blank: 'enter a whole number of days',
};

/** Ten years: a longer validity is a slip. */
const MOST_DAYS = 3660;

function readDays(text: string): number {
  const days = numberTyped(text, 'validity', DAYS)!.toNumber();
  if (days <= MOST_DAYS) return days;
  throw new TradeError('range', 'validity', `is ${days} days`, `enter ${MOST_DAYS} days or fewer`);
}

/**
 * Reads the fields.
 * @param classes the user's table of margins
 * @param sheetFormat number format of prices in the sheet
 */
export function readQuoteSettings(
  fields: QuoteFieldsText,
  classes: readonly CustomerClass[],
  sheetFormat: string | undefined,
): { readonly settings: QuoteSettings | undefined; readonly mistakes: Mistakes } {
  const mistakes: Partial<Record<NumberField, string>> = {};
  const read = <T>(field: NumberField, reader: (text: string) => T): T | undefined => {
    try {
      return reader(fields[field]);
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      mistakes[field] = asSentence(error.message);
      return undefined;
    }
  };
  const typed = fields.format.trim() && read('format', text => checkedFormat(text.trim()));
  const format = typed || sheetFormat || PLAIN_MONEY;
  const found = fields.method === 'margin' ? classes.find(({ name }) => name === fields.customerClass) : undefined;
  const customerClass = found?.name;
  if (found && found.margin === undefined) {
    mistakes.customerClass = `class ${found.name} has no margin: enter a share below 100 % in its table`;
  }
  const isTyped = fields.method === 'margin' && !found;
  const share = (field: NumberField, label: string) => read(field, text => readShare(text, label)) ?? 0;
  const margin = isTyped ? read('margin', readMargin) : undefined;
  const markups =
    fields.method === 'markup'
      ? {
          hose: share('markupHose', 'markup on hose'),
          fittings: share('markupFittings', 'markup on fittings'),
          guards: fields.markupGuards.trim() === '' ? 0 : share('markupGuards', 'markup on guards'),
          labour: fields.markupLabour.trim() === '' ? 0 : share('markupLabour', 'markup on labour'),
        }
      : undefined;
  const breaks = read('breaks', readBreaks);
  const roundTo = read('roundTo', text => readRoundTo(text, format));
  const least = read('least', text => money(text, 'least price', 'notNegative'));
  const callOut = read('callOut', text => money(text, 'call-out', 'notNegative'));
  const minimumCharge = read('minimumCharge', text => money(text, 'minimum charge', 'notNegative'));
  const validDays = read('validDays', readDays);
  if (Object.keys(mistakes).length > 0) return { settings: undefined, mistakes };
  const { customer, reference, method, isLinked } = fields;
  const terms = { breaks: breaks!, roundTo: roundTo!, least, callOut, minimumCharge, validDays: validDays! };
  const settings = { customer: customer.trim(), reference: reference.trim(), method, customerClass, margin, markups, isLinked };
  return { settings: { ...settings, ...terms, format }, mistakes };
}
