import { usualLengthRule } from '../../core/length/lengthLimits';
import { lengthUnitOf } from '../../core/units/lengthUnit';
import { dayNumber } from '../../core/units/sheetDate';
import { columnLetters, sheetInFormula } from '../../workbook/a1';
import type { Change, RangeContent, Workbook } from '../../workbook/workbook';
import { NothingToQuote } from '../catalogue/nothingToQuote';
import { usableCatalogue } from '../catalogue/usableCatalogue';
import { freeSheetName } from '../print/freeSheetName';
import { SheetWriter } from '../print/sheetWriter';
import type { PaperFields } from './paperFields';
import { paperLines } from './paperLines';
import { paperSheet, type PaperSheet } from './paperSheet';
import { printedQuote, type PrintedQuote } from './printedQuote';
import { fixed, type QuoteColumn } from './quoteLayout';
import { quoteOfSheet, type ReadQuote } from './readQuote';
import { rememberSent, sentQuotes } from './sentQuotes';

/** By these words a notice is found again when the quote is sent once more. */
const NOTICE = /sent as sheet/;
const COMPARED: readonly QuoteColumn[] = ['hose', 'fittingA', 'fittingB', 'overall', 'guard', 'quantity', 'each'];

/** Letters that no sheet's name may have. Source: Microsoft, "Rename a worksheet". */
const sheetNameOf = (number: string) => `Quote ${number.replace(/[\\/?*:[\]]/g, '-').replace(/'+$/, '')}`;

/** A formula of the quote that says when it shows something else than the sheet that was sent; undefined where its cell is taken. */
function notice(content: RangeContent, quote: ReadQuote, paper: string, { columns, firstRow }: PaperSheet): Change | undefined {
  const row = quote.rows[0]! - 2;
  const before = content.formulas[row]?.[0] ?? '';
  if (row < 0 || (content.values[row]![0] !== '' && !NOTICE.test(before)) || (before !== '' && !NOTICE.test(before)))
    return undefined;
  const last = quote.rows.at(-1)!;
  const local = (column: QuoteColumn, at: number) => quote.cell(column, at).replace(/^.*!/, '');
  const differences = COMPARED.flatMap(column => {
    const at = columns.findIndex(({ id }) => id === column);
    if (at < 0 || !quote.has(column)) return [];
    const sent = `${sheetInFormula(paper)}!${fixed(firstRow, at)}:$${columnLetters(at)}$${firstRow + quote.rows.length}`;
    return [`SUMPRODUCT((${local(column, quote.rows[0]!)}:${local(column, last)}<>${sent})*1)`];
  });
  const words = `sent as sheet ${paper.replace(/"/g, '""')}`;
  const formula = `=IFERROR(IF(${differences.join('+')}=0,"As ${words}.","Changed since it was ${words}: see Quote in the pane."),"Cannot be compared with what was ${words}.")`;
  const [change] = new SheetWriter(quote.sheet)
    .formulas(content.row + row, content.column, [[formula]])
    .done()
    .slice(1);
  return change;
}

function refuseUnpriced({ lines }: PrintedQuote): void {
  const open = lines.filter(({ each, lineTotal }) => typeof each !== 'number' || typeof lineTotal !== 'number');
  if (open.length === 0) return;
  const names = open.map(({ line, hose }) => `line ${String(line)} (${String(hose)})`).join(', ');
  throw new NothingToQuote(`No price in ${names}: see the note of the line, or wait until the sheet is calculated.`);
}

/**
 * Writes a quote as it goes to the customer, as a new sheet of values without cost and margin, and remembers what was sent.
 * @param sheet the quote; the sheet with its costs stays here
 * @param today as `2026-10-05`
 * @returns name of the new sheet
 * @throws NothingToQuote where a line has no price, the number was used before, or name or number is blank
 */
export async function writePaper(workbook: Workbook, sheet: string, fields: PaperFields, today: string): Promise<string> {
  const number = fields.number.trim();
  if (fields.ownName.trim() === '') throw new NothingToQuote('Your name is blank: the customer must see who quotes.');
  if (number === '') throw new NothingToQuote('The quote number is blank: enter one, like 2026-001.');
  const used = (await sentQuotes(workbook)).find(sent => sent.number === number);
  if (used) throw new NothingToQuote(`Number ${number} was used on ${used.day} for sheet ${used.paper}: enter another.`);
  const read = await quoteOfSheet(workbook, sheet);
  if (!read) throw new NothingToQuote(`Sheet ${sheet} cannot be read as a quote.`);
  const { content, quote } = read;
  const printed = printedQuote(content, quote);
  refuseUnpriced(printed);
  const found = await usableCatalogue(workbook);
  const paper = freeSheetName(sheetNameOf(number), await workbook.sheets(), today);
  const lines = paperLines(found, printed);
  const written = paperSheet({
    sheet: paper,
    fields,
    quote: printed,
    lines,
    lengthRule: lines.some(({ tolerance }) => tolerance !== '')
      ? usualLengthRule(lengthUnitOf(found.catalogue.units.length))
      : undefined,
    today: dayNumber(today)!,
  });
  const changed = notice(content, quote, paper, written);
  await workbook.write([...written.changes, ...(changed ? [changed] : [])]);
  await rememberSent(workbook, { number, paper, quote: sheet, day: today }, printed);
  return paper;
}
