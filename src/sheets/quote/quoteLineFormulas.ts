import { columnLetters } from '../../workbook/a1';
import { BREAK_ROW, fixed, type QuoteColumn, type QuoteLayout } from './quoteLayout';
import type { QuoteLine } from '../jobs/quoteLine';
import { isPlainHose, type PlainHoseCost } from './plainHose';
import type { PriceMethod } from './quoteSettings';
import { ratingFormulas } from './ratingFormulas';

/** What the formulas of all lines have in common. */
export interface LineContext {
  readonly layout: QuoteLayout;
  /** How a formula names the catalogue's cell. */
  readonly catalogue: string;
  readonly method: PriceMethod;
  readonly plainHose: PlainHoseCost;
  readonly deratedHoses: string | undefined;
  readonly temperatureUnit: string | undefined;
  /** Decimals of the currency. */
  readonly decimals: number;
}

/** Words that stand in place of a price. */
const NO_PRICE = 'no price';

/** Printed where the column Assembly says that something is wrong: the words there are for the shop. */
const CHECK = '"To be checked before order."';

/** A ferrule without price, a hose that the couplings use up: the sentence of the cost's cell has it, and no formula can read that. */
const NOT_KNOWN = '"No price: the cell “Hose, each” of this line says why."';

/** Costs of an assembly, as cells or as formulas without `=`. */
export interface CostParts {
  readonly hose: string;
  readonly fittings: string;
  readonly labour: string;
  readonly guard: string;
}

/** How the settings are named in a price formula. */
export type SettingReference = QuoteLayout['setting'];

/** What a price is rounded from, without `=`: the cost itself where a margin is earned on it, else the parts with their markups. */
function priceBase(method: PriceMethod, { hose, fittings, labour, guard }: CostParts, setting: SettingReference): string {
  if (method === 'margin') return `${hose}+${fittings}+${labour}+${guard}`;
  const parts = [
    `${hose}*(1+${setting('markupHose')})`,
    `${fittings}*(1+${setting('markupFittings')})`,
    `${labour}*(1+${setting('markupLabour')})`,
    `${guard}*(1+${setting('markupGuards')})`,
  ];
  return parts.join('+');
}

/** The price of one, without `=`; the words "no price" where a part of its cost is not known. */
export function priceFormula(method: PriceMethod, parts: CostParts, setting: SettingReference): string {
  const margin = method === 'margin' ? setting('margin') : '0';
  const known = [parts.hose, parts.fittings, parts.labour, parts.guard].join(',');
  const call = `HOSE.SELLPRICE(${priceBase(method, parts, setting)},${margin},${setting('roundTo')},${setting('least')})`;
  return `IF(COUNT(${known})=4,${call},"${NO_PRICE}")`;
}

/** The price before rounding and least price, without `=`; blank where it is not known. */
function exactFormula(method: PriceMethod, parts: CostParts, quantity: string, setting: SettingReference): string {
  const base = priceBase(method, parts, setting);
  const price = method === 'margin' ? `(${base})/(1-${setting('margin')})` : `(${base})`;
  const known = [parts.hose, parts.fittings, parts.labour, parts.guard].join(',');
  return `IF(COUNT(${known})=4,${price}*${quantity},"")`;
}

/** UNITCOST of a line for a quantity, without `=`; its guard, where there is one, has a column of its own. */
function unitCostCall(catalogue: string, layout: QuoteLayout, row: number, quantity: string, guard?: string): string {
  const cells = (['hose', 'fittingA', 'fittingB', 'overall'] as const).map(column => layout.cell(column, row));
  return `HOSE.UNITCOST(${[catalogue, ...cells, quantity, ...(guard ? [guard] : [])].join(',')})`;
}

/** What a guard adds to the cost of the hose, without `=`: UNITCOST with it less UNITCOST without it, so that it is cut and wasted alike. */
export const guardShare = (withGuard: string, guard: string, hoseCost: string): string =>
  `IF(${guard}="",0,INDEX(${withGuard},1,1)-${hoseCost})`;

/** Which parts of a line have no price and which rates are missing, as sentences; "" where all are there. */
function missingFormula({ layout, catalogue }: LineContext, line: QuoteLine, row: number): string {
  const cell = (column: QuoteColumn) => layout.cell(column, row);
  const said = (column: QuoteColumn, call: string, unless = '') => {
    const sentence = `"No price of "&${cell(column)}&". "`;
    const look = `IFERROR(IF(ISNUMBER(${call}),"",${sentence}),${sentence})`;
    return unless ? `IF(${unless},"",${look})` : look;
  };
  const fittings = [
    said('fittingA', `HOSE.FITTINGDATA(${catalogue},${cell('fittingA')},"price")`),
    said('fittingB', `HOSE.FITTINGDATA(${catalogue},${cell('fittingB')},"price")`, `${cell('fittingA')}=${cell('fittingB')}`),
  ];
  const parts = [
    said('hose', `HOSE.HOSEDATA(${catalogue},${cell('hose')},"price per length")`),
    ...(isPlainHose(line) ? [] : fittings),
    ...(layout.has('guard')
      ? [`IF(ISNUMBER(${cell('guardCost')})+ISERROR(${cell('hoseCost')}),"","No price of "&${cell('guard')}&". ")`]
      : []),
    layout.missingRates,
  ];
  return `TRIM(${parts.join('&')})`;
}

function guardCost({ layout, catalogue, plainHose }: LineContext, line: QuoteLine, row: number): string {
  if (!layout.has('guard')) return '0';
  const guard = layout.cell('guard', row);
  if (isPlainHose(line)) return line.guard === '' ? '0' : plainHose.guard(line, guard, layout.cell('overall', row));
  return guardShare(
    unitCostCall(catalogue, layout, row, layout.cell('quantity', row), guard),
    guard,
    layout.cell('hoseCost', row),
  );
}

/** The formulas of one line, by their columns; UNITCOST spills over four of them. */
export function lineFormulas(context: LineContext, line: QuoteLine, row: number): ReadonlyMap<number, string> {
  const { layout, catalogue, method, decimals } = context;
  const cell = (column: QuoteColumn) => layout.cell(column, row);
  const setting = (name: Parameters<SettingReference>[0]) => layout.setting(name);
  const parts = { hose: cell('hoseCost'), fittings: cell('fittingsCost'), labour: cell('labourCost'), guard: cell('guardCost') };
  const known = `COUNT(${parts.hose},${parts.fittings},${parts.labour},${parts.guard})=4`;
  const formulas = new Map<number, string>();
  const put = (column: number, formula: string) => formulas.set(column, `=${formula}`);
  put(layout.column('each'), priceFormula(method, parts, setting));
  put(layout.column('lineTotal'), `IF(ISNUMBER(${cell('each')}),ROUND(${cell('each')}*${cell('quantity')},${decimals}),"")`);
  put(
    layout.column('note'),
    `IF(ISNUMBER(${cell('each')}),IFERROR(IF(${cell('check')}="OK","",${CHECK}),${CHECK}),IF(ISERROR(${cell('each')}),"No price: look at margin and rounding.",IF(${cell('missing')}="",${NOT_KNOWN},${cell('missing')})))`,
  );
  const isPlain = isPlainHose(line);
  const rating = ratingFormulas(context, line, row);
  put(layout.column('check'), rating.check);
  put(layout.column('pressure'), rating.pressure);
  put(layout.column('rating'), rating.basis);
  const { hose, labour: labourOf } = context.plainHose;
  put(
    layout.column('hoseCost'),
    isPlain ? hose(cell('hose'), cell('overall')) : unitCostCall(catalogue, layout, row, cell('quantity')),
  );
  if (isPlain) {
    put(layout.column('fittingsCost'), '0');
    put(layout.column('labourCost'), labourOf(cell('quantity')));
    put(layout.column('assemblyCost'), `${parts.hose}+${parts.fittings}+${parts.labour}`);
  }
  put(layout.column('guardCost'), guardCost(context, line, row));
  put(layout.column('cost'), `IF(${known},${parts.hose}+${parts.fittings}+${parts.labour}+${parts.guard},"not known")`);
  put(layout.column('exact'), exactFormula(method, parts, cell('quantity'), setting));
  put(layout.column('missing'), missingFormula(context, line, row));
  for (let index = 0; index < layout.breaks; index++) {
    const labour = `$${columnLetters(layout.breakLabourColumn(index))}${row + 1}`;
    const quantity = fixed(BREAK_ROW, layout.breakColumn(index));
    const ofBreak = isPlain ? labourOf(quantity) : `INDEX(${unitCostCall(catalogue, layout, row, quantity)},1,3)`;
    put(layout.breakLabourColumn(index), ofBreak);
    put(layout.breakColumn(index), priceFormula(method, { ...parts, labour }, setting));
  }
  return formulas;
}
