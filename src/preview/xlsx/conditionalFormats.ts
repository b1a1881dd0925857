import type { IRange, IStyleBase } from '@univerjs/core';
import type { Color, Fill } from 'exceljs';
import { cellBlockOf } from './address';
import { pageStyle } from './cellStyle';
import { hexColor } from './colors';
import type { FileFormat, FileRule } from './fileFormats';
import { typedFormula } from './storedFormula';
import { cellAddress } from '../../workbook/a1';

/** A rule of the spreadsheet page; only what its kinds have in common is named. */
export interface PageRule {
  readonly type: 'highlightCell' | 'colorScale' | 'dataBar' | 'iconSet';
  readonly subType?: string;
  readonly operator?: string;
  readonly value?: unknown;
  readonly style?: IStyleBase;
  readonly [other: string]: unknown;
}

/** Where a rule of the page holds; the first one in a sheet's list wins. */
export interface PageFormat {
  readonly cfId: string;
  readonly ranges: IRange[];
  readonly stopIfTrue: boolean;
  readonly rule: PageRule;
}

/** More rules of one sheet than people make; each is asked for each cell. */
const MOST_RULES = 500;
const SIGNS: Readonly<Record<string, string>> = {
  equal: '=',
  notEqual: '<>',
  greaterThan: '>',
  lessThan: '<',
  greaterThanOrEqual: '>=',
  lessThanOrEqual: '<=',
};

/** What a rule lays over a cell. Its ground stands where other styles have the colour of a pattern (ECMA-376, 18.8.14). */
function styleOf({ style }: FileRule): IStyleBase {
  const fill = style?.fill as (Fill & { bgColor?: Partial<Color>; fgColor?: Partial<Color> }) | undefined;
  const ground = hexColor(fill?.bgColor ?? fill?.fgColor);
  return { ...pageStyle({ font: style?.font ?? {} }), ...(ground && { bg: { rgb: ground } }) } as IStyleBase;
}

const highlight = (rule: FileRule, subType: string, more: object): PageRule => ({
  type: 'highlightCell',
  subType,
  style: styleOf(rule),
  ...more,
});

const byFormula = (rule: FileRule, formula: string) => highlight(rule, 'formula', { value: typedFormula(formula) });

function cellRule(rule: FileRule, first: string): PageRule | undefined {
  const { operator = '' } = rule;
  const formulae = (rule.formulae ?? []).map(String);
  const numbers = formulae.map(Number);
  const [low, high] = formulae;
  if (low === undefined) return undefined;
  const isRange = operator === 'between' || operator === 'notBetween';
  if (numbers.every(Number.isFinite) && formulae.every(text => text.trim() !== ''))
    return highlight(rule, 'number', { operator, value: isRange ? numbers : numbers[0] });
  const text = /^"((?:[^"]|"")*)"$/.exec(low)?.[1]?.replace(/""/g, '"');
  if (text !== undefined && /^(?:equal|notEqual)$/.test(operator)) return highlight(rule, 'text', { operator, value: text });
  if (isRange) {
    const inside = `AND(${first}>=${low},${first}<=${high})`;
    return byFormula(rule, operator === 'between' ? inside : `NOT(${inside})`);
  }
  const sign = SIGNS[operator];
  return sign === undefined ? undefined : byFormula(rule, `${first}${sign}${low}`);
}

const valueOf = ({ type, value }: { type: string; value?: number | string }) => ({ type, ...(value !== undefined && { value }) });
const colorsOf = ({ color }: FileRule) => [color ?? []].flat().map(each => hexColor(each as Partial<Color>) ?? '#FFFFFF');

function scaleRule(rule: FileRule): PageRule | undefined {
  const colors = colorsOf(rule);
  const config = (rule.cfvo ?? []).map((each, index) => ({ index, color: colors[index], value: valueOf(each) }));
  return config.length > 1 && config.every(({ color }) => color) ? { type: 'colorScale', config } : undefined;
}

function barRule(rule: FileRule): PageRule | undefined {
  const [min, max] = rule.cfvo ?? [];
  const [color] = colorsOf(rule);
  if (!min || !max) return undefined;
  const config = { min: valueOf(min), max: valueOf(max), isGradient: true, positiveColor: color, nativeColor: '#FF0000' };
  return { type: 'dataBar', isShowValue: true, config };
}

/** A file's rule for the page; undefined where the page does not draw its kind. */
function pageRule(rule: FileRule, first: string): PageRule | undefined {
  switch (rule.type) {
    case 'cellIs':
      return cellRule(rule, first);
    case 'top10':
      return highlight(rule, 'rank', { isBottom: !!rule.bottom, isPercent: !!rule.percent, value: rule.rank ?? 10 });
    case 'aboveAverage':
      return highlight(rule, 'average', { operator: rule.aboveAverage === false ? 'lessThan' : 'greaterThan' });
    case 'duplicateValues':
    case 'uniqueValues':
      return highlight(rule, rule.type, {});
    case 'colorScale':
      return scaleRule(rule);
    case 'dataBar':
      return barRule(rule);
    case 'iconSet':
      return undefined;
    default:
      // Text and dates are asked for by a formula that stands with the rule.
      return rule.formulae?.[0] === undefined ? undefined : byFormula(rule, String(rule.formulae[0]));
  }
}

/** What a sheet holds at most. */
export interface SheetSize {
  readonly rowCount: number;
  readonly columnCount: number;
}

/** A sheet's conditional formats for the page, and how many rules it does not draw. */
export function pageFormats(
  formats: readonly FileFormat[],
  { rowCount, columnCount }: SheetSize,
): { drawn: readonly PageFormat[]; undrawn: number } {
  const all = formats.flatMap(({ ref, rules }, format) => {
    const blocks = ref.split(/\s+/).flatMap(address => cellBlockOf(address) ?? []);
    const inside = blocks.filter(block => block.startRow < rowCount && block.startColumn < columnCount);
    const ranges = inside.map(block => ({
      ...block,
      endRow: Math.min(block.endRow, rowCount - 1),
      endColumn: Math.min(block.endColumn, columnCount - 1),
    }));
    const first = ranges[0] && cellAddress({ row: ranges[0].startRow, column: ranges[0].startColumn });
    return (rules ?? []).map((rule, index) => ({
      priority: rule.priority ?? Number.MAX_SAFE_INTEGER,
      format: { cfId: `file-${format}-${index}`, ranges, stopIfTrue: false },
      rule: first === undefined ? undefined : pageRule(rule, first),
    }));
  });
  const drawn = all
    .sort((a, b) => a.priority - b.priority)
    .flatMap(({ format, rule }) => (rule ? [{ ...format, rule }] : []))
    .slice(0, MOST_RULES);
  return { drawn, undrawn: all.length - drawn.length };
}
