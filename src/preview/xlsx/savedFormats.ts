import { inQuotes } from '../../workbook/inQuotes';
import type { IStyleBase, IWorkbookData } from '@univerjs/core';
import { cellBlockAddress } from './address';
import { fileStyle } from './cellStyle';
import { fileColor } from './colors';
import { pageFormats, type PageFormat, type PageRule, type SheetSize } from './conditionalFormats';
import type { FileFormat, FileRule } from './fileFormats';
import { storedFormula } from './storedFormula';
import { cellAddress } from '../../workbook/a1';

/** Where the spreadsheet page keeps conditional formats in a workbook's data. */
export const FORMATS_RESOURCE = 'SHEET_CONDITIONAL_FORMATTING_PLUGIN';

type Style = NonNullable<FileRule['style']>;

function styleFor(style: IStyleBase | undefined): Style {
  // Its look only: such a format changes neither kind nor size of the letters.
  const look = Object.fromEntries(
    Object.entries(fileStyle(style ?? {}).font ?? {}).filter(([key]) => key !== 'name' && key !== 'size'),
  );
  const ground = style?.bg?.rgb ? fileColor(style.bg.rgb) : undefined;
  return {
    ...(Object.keys(look).length > 0 && { font: look }),
    ...(ground && { fill: { type: 'pattern', pattern: 'solid', bgColor: ground } as Style['fill'] }),
  } as Style;
}

/** Text rules as formulas about the first cell; every spreadsheet program reads those. */
function textFormula({ operator, value }: PageRule, cell: string): string | undefined {
  const text = inQuotes(String(value ?? ''));
  const found: Readonly<Record<string, string>> = {
    beginsWith: `LEFT(${cell},LEN(${text}))=${text}`,
    endsWith: `RIGHT(${cell},LEN(${text}))=${text}`,
    containsText: `NOT(ISERROR(SEARCH(${text},${cell})))`,
    notContainsText: `ISERROR(SEARCH(${text},${cell}))`,
    containsBlanks: `LEN(TRIM(${cell}))=0`,
    notContainsBlanks: `LEN(TRIM(${cell}))>0`,
    containsErrors: `ISERROR(${cell})`,
    notContainsErrors: `NOT(ISERROR(${cell}))`,
  };
  return found[operator ?? ''];
}

type Half = Omit<FileRule, 'priority' | 'style'>;
const expression = (formula: string | undefined): Half | undefined =>
  formula === undefined ? undefined : { type: 'expression', formulae: [formula] };

function highlightRule(rule: PageRule, cell: string, whole: string): Half | undefined {
  const { subType, operator, value } = rule;
  switch (subType) {
    case 'number':
      return { type: 'cellIs', operator: operator!, formulae: [value].flat() as number[] };
    case 'text':
      if (operator === 'equal' || operator === 'notEqual')
        return { type: 'cellIs', operator, formulae: [inQuotes(String(value ?? ''))] };
      return expression(textFormula(rule, cell));
    case 'formula':
      return expression(storedFormula(String(value)));
    case 'rank':
      return { type: 'top10', rank: Number(value), percent: !!rule.isPercent, bottom: !!rule.isBottom };
    case 'average':
      return { type: 'aboveAverage', aboveAverage: !operator?.startsWith('less') };
    case 'duplicateValues':
      return expression(`COUNTIF(${whole},${cell})>1`);
    case 'uniqueValues':
      return expression(`COUNTIF(${whole},${cell})=1`);
    default:
      return undefined;
  }
}

interface ScaleStep {
  readonly color: string;
  readonly value: { readonly type: string; readonly value?: number | string };
}

function fileRule(rule: PageRule, cell: string, whole: string): Omit<FileRule, 'priority'> | undefined {
  if (rule.type === 'highlightCell') {
    const half = highlightRule(rule, cell, whole);
    return half && { ...half, style: styleFor(rule.style) };
  }
  if (rule.type === 'colorScale') {
    const steps = rule.config as readonly ScaleStep[];
    return { type: 'colorScale', cfvo: steps.map(({ value }) => value), color: steps.map(({ color }) => fileColor(color) ?? {}) };
  }
  if (rule.type === 'dataBar') {
    const { min, max, positiveColor } = rule.config as {
      min: ScaleStep['value'];
      max: ScaleStep['value'];
      positiveColor: string;
    };
    return { type: 'dataBar', cfvo: [min, max], color: fileColor(positiveColor) ?? {} };
  }
  return undefined;
}

function savedFormat(format: PageFormat, known: ReadonlyMap<string, FileRule>, drawn: ReadonlyMap<string, PageRule>) {
  const [range] = format.ranges;
  if (!range) return undefined;
  const ref = format.ranges.map(cellBlockAddress).join(' ');
  // As the file had it, unless somebody changed it here.
  const isUnchanged = JSON.stringify(drawn.get(format.cfId)) === JSON.stringify(format.rule);
  const absolute = cellBlockAddress(range).replace(/([A-Z]+)(\d+)/g, '$$$1$$$2');
  const rule = isUnchanged
    ? known.get(format.cfId)
    : fileRule(format.rule, cellAddress({ row: range.startRow, column: range.startColumn }), absolute);
  return rule && { ref, rule };
}

/**
 * A sheet's conditional formats for a file: those that the page draws as they stand now, and behind them those it does not.
 * @param original what the file held that was opened
 */
export function savedFormats(
  data: IWorkbookData,
  sheetId: string,
  original: readonly FileFormat[],
  size: SheetSize,
): readonly FileFormat[] {
  const kept = data.resources?.find(({ name }) => name === FORMATS_RESOURCE)?.data;
  // An engine without this part of the page keeps nothing, and changes nothing.
  if (kept === undefined) return original;
  const formats = (JSON.parse(kept || '{}') as Record<string, PageFormat[]>)[sheetId] ?? [];
  const known = new Map(
    original.flatMap(({ rules }, format) => rules.map((rule, index) => [`file-${format}-${index}`, rule] as const)),
  );
  const drawn = new Map(pageFormats(original, size).drawn.map(({ cfId, rule }) => [cfId, rule]));
  const now = formats.flatMap(format => savedFormat(format, known, drawn) ?? []);
  const undrawn = original.flatMap(({ ref, rules }, format) =>
    rules.flatMap((rule, index) => (drawn.has(`file-${format}-${index}`) ? [] : [{ ref, rule }])),
  );
  return [...now, ...undrawn].map(({ ref, rule }, index) => ({ ref, rules: [{ ...rule, priority: index + 1 }] }));
}
