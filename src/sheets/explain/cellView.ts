import { registeredFunctions } from '../../workbook/registeredFunctions';
import type { CellValue, RangeContent, Workbook } from '../../workbook/workbook';
import type { FunctionMetadata } from '../../workbook/functionMetadata';
import { BLANKS_AS_ZERO, showsBlanksAsZero } from './blanksAsZero';
import { argumentCells, type ArgumentCells } from './argumentCells';
import { functionCall, type FunctionCall } from '../../workbook/functionCall';
import { spilledResult } from '../../workbook/spilledResult';
import { SPILL_SENTENCE } from '../table/spilledFrom';
import { valueText } from './valueText';

/** One argument of the selected cell's function. */
export interface ArgumentView {
  readonly name: string;
  readonly help: string;
  readonly optional: boolean;
  /** As written in the formula; "" where it is left out. */
  readonly written: string;
  /** What it holds now, in short. */
  readonly now: string;
}

/** What the pane says of the selected cell. */
export interface CellView {
  readonly address: string;
  /** What the cell shows, in short; "" where it is blank. */
  readonly shown: string;
  /** The function of ours in the cell's formula, or in the formula that spills into it. */
  readonly call?: {
    readonly id: string;
    readonly description: string;
    /** Beside the pane, wherever it is served from. */
    readonly helpUrl: string;
    readonly arguments: readonly ArgumentView[];
  };
  /** Code of the error that the cell shows. */
  readonly error?: string;
  /** The sentence behind that error, or why it cannot be had. */
  readonly sentence?: string;
  /** Why what the cell shows cannot be right, and what to do. */
  readonly warning?: string;
}

const inShort = (value: unknown): string =>
  value === null ? 'blank' : typeof value === 'object' ? String((value as { basicValue?: unknown }).basicValue) : String(value);

function nowOf(cells: ArgumentCells | undefined, row: number): string {
  if (cells === undefined) return 'worked out by the sheet';
  if (cells === null) return 'left out';
  const line = cells[cells.length === 1 ? 0 : row] ?? cells[0]!;
  const values = line.slice(0, 6).map(inShort).join(', ') + (line.length > 6 ? ' …' : '');
  return cells.length > 1 ? `${values} (row ${Math.min(row, cells.length - 1) + 1} of ${cells.length})` : values;
}

interface Source {
  readonly call: FunctionCall;
  readonly sheet: string;
  /** The cell's place in the function's result. */
  readonly row: number;
  readonly column: number;
}

/** The call of ours in a formula, and which place of its result stands so many rows and columns from the formula. */
function sourceIn(formula: string, sheet: string, row: number, across: number): Source | undefined {
  const call = functionCall(formula);
  const column = (spilledResult(formula)?.columns[across] ?? across + 1) - 1;
  return call && { call, sheet, row, column };
}

/** The formula behind the selected cell: its own, or the one that spills into it, with the cell's place in the spill. */
async function sourceOf(workbook: Workbook, cell: RangeContent): Promise<Source | undefined> {
  const own = sourceIn(cell.formulas[0]?.[0] ?? '', cell.sheet, 0, 0);
  if (own) return own;
  const address = cell.address.split(':')[0]!;
  const parent = await workbook.spillParent({ sheet: cell.sheet, address });
  if (!parent) return undefined;
  const [content] = await workbook.read([parent]);
  if (!content) return undefined;
  return sourceIn(content.formulas[0]?.[0] ?? '', parent.sheet, cell.row - content.row, cell.column - content.column);
}

/** Calls the function again with what its arguments hold now, and takes the sentence of the cell's place in the result. */
async function sentenceOf({ call, row, column }: Source, cells: readonly (ArgumentCells | undefined)[]): Promise<string> {
  const worksheetFunction = registeredFunctions()?.[call.id];
  if (!worksheetFunction) return 'The worksheet functions have not been loaded here: reload the add-in.';
  if (cells.includes(undefined))
    return 'An argument is a formula of its own: put it into a cell by itself to see what is wrong with it.';
  try {
    const result = (await worksheetFunction(...(cells as ArgumentCells[]))) as unknown[][];
    const value = result[row]?.[column] as { code?: unknown; message?: unknown } | undefined;
    if (typeof value?.code === 'string')
      return String(value.message ?? '') || `An argument of this row holds ${value.code}: correct that cell first.`;
    return call.isWhole
      ? 'The function answers now: enter the formula again.'
      : 'The function itself answers; the error comes from the formula around it.';
  } catch (error) {
    return String((error as { message?: unknown }).message ?? '') || 'An argument holds an error: correct that cell first.';
  }
}

/** Whether the host hands blanks over as 0; not asked of functions that take long, nor where a formula stands around the call. */
async function hasZeros(
  { call, row, column }: Source,
  { options }: FunctionMetadata,
  cells: readonly (ArgumentCells | undefined)[],
  shown: CellValue,
): Promise<boolean> {
  return call.isWhole && !options?.cancelable && showsBlanksAsZero(call.id, cells, { shown, row, column });
}

const errorOf = (value: CellValue | undefined) => (typeof value === 'object' ? value : undefined);

/**
 * What there is to say of the selected cell: its function, each argument with what it holds now, and the sentence of its error.
 * @param cell the selection; its first cell counts
 */
export async function cellView(
  workbook: Workbook,
  functions: readonly FunctionMetadata[],
  cell: RangeContent,
): Promise<CellView> {
  const address = cell.address.split(':')[0]!;
  const value = cell.values[0]?.[0] ?? '';
  const shown = valueText(value);
  const error = errorOf(value);
  const source = await sourceOf(workbook, cell);
  if (!source) return { address, shown, error: error?.error, sentence: error?.sentence };
  const metadata = functions.find(({ id }) => id === source.call.id);
  if (!metadata)
    return { address, shown, error: error?.error, sentence: `There is no function HOSE.${source.call.id}: check its name.` };
  const cells = await argumentCells(workbook, source.sheet, source.call.arguments);
  const view = metadata.parameters.map(({ name, description = '', optional = false }, index) => ({
    name,
    help: description,
    optional,
    written: source.call.arguments[index]?.text ?? '',
    now: nowOf(index < cells.length ? cells[index] : null, source.row),
  }));
  return {
    address,
    shown,
    call: { id: metadata.id, description: metadata.description ?? '', helpUrl: `help/${metadata.id}.html`, arguments: view },
    error: error?.error,
    sentence: error && (error.sentence || (error.error === '#SPILL!' ? SPILL_SENTENCE : await sentenceOf(source, cells))),
    warning: (await hasZeros(source, metadata, cells, value)) ? BLANKS_AS_ZERO : undefined,
  };
}
