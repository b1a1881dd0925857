import type { SheetWriter } from '../print/sheetWriter';
import { decimalsOf } from '../catalogue/currencyFormat';
import { fixed, type QuoteLayout, type QuoteSide } from './quoteLayout';
import type { QuoteSettings } from './quoteSettings';

/** Rows of the totals, from the first row below the lines. */
const ROWS = ['sum', 'toMinimum', 'callOut', 'total'] as const;
type TotalRow = (typeof ROWS)[number];

/** The cell of a total, as a formula of the sheet names it. */
function totalCell(layout: QuoteLayout, row: TotalRow): string {
  return fixed(totalRow(layout, row), layout.column('lineTotal'));
}

function totalRow(layout: QuoteLayout, row: TotalRow): number {
  return layout.lastRow + 2 + ROWS.indexOf(row);
}

/**
 * Writes the totals below the lines: their sum, what the minimum charge adds, the call-out, and the total, which says so where a
 * line has no price; on the sheet with the costs, what rounding and least prices add.
 * @returns the last row that is printed
 */
export function writeTotals(
  { quote: writer, costs }: Readonly<Record<QuoteSide, SheetWriter>>,
  layout: QuoteLayout,
  { format }: QuoteSettings,
): number {
  const decimals = decimalsOf(format);
  const totals = layout.lineRange('lineTotal');
  const [count, lines] = [`COUNT(${totals})`, String(layout.lines)];
  const round = (formula: string) => `=ROUND(${formula},${decimals})`;
  const [sum, callOut] = (['sum', 'callOut'] as const).map(row => totalCell(layout, row));
  const minimum = layout.setting('quote', 'minimumCharge');
  const first = totalRow(layout, 'sum');
  const label = layout.column('fittingB');
  const incomplete = `"Total, incomplete: "&(${lines}-${count})&" of ${lines} lines without a price"`;
  writer.formulas(first, label, [
    ['="Sum of the lines"'],
    [`=IF(${minimum}>0,"Minimum charge supplement (minimum "&TEXT(${minimum},"0.00")&")","")`],
    [`=IF(${layout.setting('quote', 'callOut')}>0,"Call-out","")`],
    [`=IF(${count}=${lines},"Total",${incomplete})`],
  ]);
  writer.formulas(first, layout.column('lineTotal'), [
    [round(`SUM(${totals})`)],
    [`=IF(${minimum}>0,IF(${count}=${lines},ROUND(MAX(0,${minimum}-${sum}),${decimals}),0),"")`],
    [`=IF(${layout.setting('quote', 'callOut')}>0,ROUND(${layout.setting('quote', 'callOut')},${decimals}),"")`],
    [round(`SUM(${sum}:${callOut})`)],
  ]);
  writer.format(first, layout.column('lineTotal'), ROWS.length, 1, format);
  const width = layout.column('lineTotal') - label + 1;
  writer.style(totalRow(layout, 'total'), label, 1, width, { bold: true, border: 'bottom' });
  const exact = `SUM(${layout.lineRange('exact')})`;
  const added = [
    [`=${exact}`, '="Sum of the lines before rounding"'],
    [`=${layout.quoteCell('costs', first, layout.column('lineTotal'))}-${exact}`, '="Added by rounding and least prices"'],
  ];
  costs.formulas(
    first,
    layout.settingColumn - 1,
    added.map(([, words]) => [words!]),
  );
  costs.formulas(
    first,
    layout.settingColumn,
    added.map(([formula]) => [formula!]),
  );
  costs.format(first, layout.settingColumn, added.length, 1, format);
  return totalRow(layout, 'total');
}
