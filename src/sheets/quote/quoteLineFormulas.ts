import type { QuoteColumn, QuoteLayout, QuoteSetting, QuoteSide } from './quoteLayout';
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
  readonly ratingDecimals: number | undefined;
  /** Decimals of the currency. */
  readonly decimals: number;
}

/** Words that stand in place of a price. */
const NO_PRICE = 'no price';

/** Printed where the column Assembly says that something is wrong: the words there are for the shop. */
const CHECK = '"To be checked before order."';

/** A ferrule without price, a hose that the couplings use up: the sentence of the cost's cell has it, and no formula can read that. */
const NOT_KNOWN = '"No price: “Hose, each” of this line, on the sheet with the costs, says why."';

/** Costs of an assembly, as cells or as formulas without `=`. */
export interface CostParts {
  readonly hose: string;
  readonly fittings: string;
  readonly labour: string;
  readonly guard: string;
}

/** How the settings are named in a price formula. */
export type SettingReference = (setting: QuoteSetting) => string;

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
  const cells = (['hose', 'fittingA', 'fittingB', 'overall'] as const).map(column => layout.cell('costs', column, row));
  return `HOSE.UNITCOST(${[catalogue, ...cells, quantity, ...(guard ? [guard] : [])].join(',')})`;
}

/** What a guard adds to the cost of the hose, without `=`: UNITCOST with it less UNITCOST without it, so that it is cut and wasted alike. */
export const guardShare = (withGuard: string, guard: string, hoseCost: string): string =>
  `IF(${guard}="",0,INDEX(${withGuard},1,1)-${hoseCost})`;

/** Which parts of a line have no price and which rates are missing, as sentences; "" where all are there. */
function missingFormula({ layout, catalogue }: LineContext, line: QuoteLine, row: number): string {
  const cell = (column: QuoteColumn) => layout.cell('costs', column, row);
  const said = (column: QuoteColumn, call: string, unless = '') => {
    // A name that is taken out of the job sheet later.
    const sentence = `IF(${cell(column)}="","A part is blank: price it by hand. ","No price of "&${cell(column)}&". ")`;
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
  const cell = (column: QuoteColumn) => layout.cell('costs', column, row);
  const guard = cell('guard');
  if (isPlainHose(line)) return line.guard === '' ? '0' : plainHose.guard(line, guard, cell('overall'));
  return guardShare(unitCostCall(catalogue, layout, row, cell('quantity'), guard), guard, cell('hoseCost'));
}

/** Formulas of a line by column, on each of the two sheets. */
export type LineFormulas = Readonly<Record<QuoteSide, ReadonlyMap<number, string>>>;

/** What a line's formulas of one sheet call the cells of both. */
function named({ layout }: LineContext, on: QuoteSide, row: number) {
  const cell = (column: QuoteColumn) => layout.cell(on, column, row);
  const setting: SettingReference = name => layout.setting(on, name);
  const parts = { hose: cell('hoseCost'), fittings: cell('fittingsCost'), labour: cell('labourCost'), guard: cell('guardCost') };
  return { cell, setting, parts };
}

/** What the quote itself shows: its price is worked out from costs and settings on the other sheet. */
function quoteFormulas(context: LineContext, line: QuoteLine, row: number): ReadonlyMap<number, string> {
  const { layout, method, decimals } = context;
  const { cell, setting, parts } = named(context, 'quote', row);
  const rating = ratingFormulas(context, line, row);
  const each = cell('each');
  const total = `IF(ISNUMBER(${each}),ROUND(${each}*${cell('quantity')},${decimals}),"")`;
  const note = `IF(ISNUMBER(${each}),IFERROR(IF(${cell('check')}="OK","",${CHECK}),${CHECK}),IF(ISERROR(${each}),"No price: look at margin and rounding.",IF(${cell('missing')}="",${NOT_KNOWN},${cell('missing')})))`;
  const breaks = Array.from({ length: layout.breaks }, (_, index): [number, string] => {
    const labour = layout.breakLabour('quote', index, row);
    return [layout.breakColumn(index), `=${priceFormula(method, { ...parts, labour }, setting)}`];
  });
  return new Map([
    [layout.column('each'), `=${priceFormula(method, parts, setting)}`],
    [layout.column('lineTotal'), `=${total}`],
    [layout.column('note'), `=${note}`],
    [layout.column('pressure'), `=${rating.pressure}`],
    [layout.column('rating'), `=${rating.basis}`],
    ...breaks,
  ]);
}

/** Cost and what is earned; UNITCOST spills over four columns. */
function costFormulas(context: LineContext, line: QuoteLine, row: number): ReadonlyMap<number, string> {
  const { layout, catalogue, method } = context;
  const { cell, setting, parts } = named(context, 'costs', row);
  const known = `COUNT(${parts.hose},${parts.fittings},${parts.labour},${parts.guard})=4`;
  const isPlain = isPlainHose(line);
  const { hose, labour: labourOf } = context.plainHose;
  const formulas = new Map<number, string>();
  const put = (column: number, formula: string) => formulas.set(column, `=${formula}`);
  (['line', 'hose', 'each'] as const).forEach((column, at) => put(at, cell(column)));
  put(layout.column('check'), ratingFormulas(context, line, row).check);
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
  put(
    layout.column('earned'),
    `IF(COUNT(${cell('each')},${cell('cost')})=2,IF(${cell('each')}>0,1-${cell('cost')}/${cell('each')},""),"")`,
  );
  put(layout.column('exact'), exactFormula(method, parts, cell('quantity'), setting));
  put(layout.column('missing'), missingFormula(context, line, row));
  for (let index = 0; index < layout.breaks; index++) {
    const quantity = layout.breakQuantity('costs', index);
    const ofBreak = isPlain ? labourOf(quantity) : `INDEX(${unitCostCall(catalogue, layout, row, quantity)},1,3)`;
    put(layout.breakLabourColumn(index), ofBreak);
  }
  return formulas;
}

/** The formulas of one line, by sheet and column. */
export function lineFormulas(context: LineContext, line: QuoteLine, row: number): LineFormulas {
  return { quote: quoteFormulas(context, line, row), costs: costFormulas(context, line, row) };
}
