import { INPUT_FILL } from '../print/sheetFills';
import { textLines } from '../print/textLines';
import type { SheetWriter } from '../print/sheetWriter';
import { SETTING_LABELS, type QuoteLayout } from './quoteLayout';
import { settingFormulas, type QuoteTerms } from './quoteTerms';
import { SHEET_TITLE, WORKING_TITLE } from './quoteWords';
import { DATE_FORMAT } from '../print/dateFormat';

/** Letters that fit across the printed columns. */
export const ACROSS = 140;

/** What stands above the lines of a quote. */
export interface HeadInput extends QuoteTerms {
  /** How a formula names the catalogue's cell. */
  readonly catalogue: string;
  /** The handle now, kept as text beside the living one. */
  readonly handle: string;
  /** Which rates are missing, as a formula without `=`. */
  readonly missingRates: string;
  /** Lines that must not be made, as the sheet calls them: the customer is told that they are not quoted. */
  readonly notQuoted: readonly string[];
  /** Day number of the sheet. */
  readonly today: number;
}

/** Whom the quote is for, from and until when, and whether the catalogue has changed since. */
export function writeHead(writer: SheetWriter, input: HeadInput, layout: QuoteLayout): void {
  const { settings, catalogue, handle, notQuoted, today } = input;
  writer.values(0, 0, [[SHEET_TITLE]]).style(0, 0, 1, 1, { bold: true, fontSize: 16 });
  writer.values(1, 0, [['Customer'], ['Reference'], ['Date'], ['Valid until'], ['Prices from'], ['When written']]);
  writer.style(1, 0, 6, 1, { bold: true });
  writer.values(1, 2, [[settings.customer], [settings.reference], [today]]);
  writer.formulas(4, 2, [[`=C4+${layout.setting('quote', 'validDays')}`], [`=${catalogue}`]]);
  writer.values(6, 2, [[handle]]);
  writer.format(3, 2, 2, 1, DATE_FORMAT);
  const changed = '=IF(C6=C7,"","The catalogue has changed since this quote was written: prices follow it.")';
  const step = layout.setting('quote', 'roundTo');
  const rounding = `="Each price is rounded up to a multiple of "&${step}&"; a line is price × quantity; the total is the sum of the rounded lines. Without tax."`;
  writer.formulas(7, 0, [[changed], [rounding]]).style(7, 0, 1, 1, { bold: true, color: '#8F1D1D' });
  if (notQuoted.length === 0) return;
  const lines = notQuotedLines(notQuoted);
  const said =
    lines.length === 1 ? lines[0]! : `${notQuoted.length} lines are not in this quote: they are named below the totals.`;
  writer.values(9, 0, [[said]]).style(9, 0, 1, 1, { bold: true });
}

/** Which lines are not quoted, in lines that fit the page; one alone has its place above the quote. */
export const notQuotedLines = (notQuoted: readonly string[]): readonly string[] =>
  notQuoted.length === 0 ? [] : textLines(`Not in this quote, to be clarified first: ${notQuoted.join(', ')}.`, ACROSS);

/** The settings that the prices follow, on the sheet with the costs. */
export function writeSettings(writer: SheetWriter, input: HeadInput, layout: QuoteLayout): void {
  const { settings } = layout;
  const labels = layout.settingColumn - 1;
  writer.values(0, labels, [[WORKING_TITLE]]).style(0, labels, 1, 1, { bold: true });
  writer.values(
    1,
    labels,
    settings.map(setting => [SETTING_LABELS[setting]]),
  );
  const formulas = settingFormulas(input, layout);
  settings.forEach((setting, index) => {
    const content = formulas[setting];
    const at = [1 + index, layout.settingColumn] as const;
    if (typeof content === 'string' && content.startsWith('=')) writer.formulas(...at, [[content]]);
    else if (content !== undefined) writer.values(...at, [[content]]);
    if (/^(?:margin|markup)/.test(setting)) writer.format(...at, 1, 1, '0.0 %');
    else if (/^(?:roundTo|least|callOut|minimumCharge)$/.test(setting)) writer.format(...at, 1, 1, input.settings.format);
  });
  writer.style(1, layout.settingColumn, settings.length, 1, { fill: INPUT_FILL, border: 'all' });
  writer.formulas(0, layout.column('missing'), [['="Missing rates"'], [`=${input.missingRates}`]]);
  writer.style(0, layout.column('missing'), 1, 1, { bold: true });
}
