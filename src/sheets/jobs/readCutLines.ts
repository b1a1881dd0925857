import { lengthLimits, usualLengthRule } from '../../core/length/lengthLimits';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { RangeContent } from '../../workbook/workbook';
import { benchCut } from './benchRounding';
import type { CutLine, LengthRange } from './cutLine';
import { JOB_WORDS } from '../table/jobWords';
import type { RowProblem } from '../table/rowProblem';
import { countOfCell, lengthOfCell, lengthText, unitOfHeading } from '../table/lengthCell';
import { cellOf, dataRows, findTable, sheetRow, textOf, type SheetTable } from '../table/sheetTable';

const JOB_HEADINGS = {
  cutLength: JOB_WORDS.cutLength,
  overall: JOB_WORDS.overall,
  hose: JOB_WORDS.hose,
  quantity: JOB_WORDS.quantity,
  line: JOB_WORDS.line,
  label: /^(?:label|wanted for|for|assembly no\.?|machine|description|mark|name)$/,
  shortest: JOB_WORDS.shortest,
  longest: JOB_WORDS.longest,
  check: /^(?:check|assembly check)$/,
  bore: JOB_WORDS.bore,
} as const;
export type JobField = keyof typeof JOB_HEADINGS;

/** The lines of a job sheet that can be cut, and the rows that cannot. */
export interface CutLines {
  readonly lines: readonly CutLine[];
  readonly problems: readonly RowProblem[];
}

/** The job table of a sheet: it has at least hose, cut length and quantity. */
export function jobTable(content: RangeContent | undefined, near?: number): SheetTable<JobField> | undefined {
  return findTable(content, JOB_HEADINGS, ['hose', 'cutLength', 'quantity'], near);
}

/** The unit in which a job table gives its cut lengths, where its heading says so. */
export function jobUnit(table: SheetTable<JobField>): LengthUnit | undefined {
  return unitOfHeading(table.columns.cutLength!.unit);
}

function limitsOf(table: SheetTable<JobField>, row: number, overall: Decimal, unit: LengthUnit): LengthRange | undefined {
  const read = (field: JobField) => lengthOfCell(cellOf(table, row, field), field, table.columns[field]?.unit ?? '', unit);
  const [shortest, longest] = [read('shortest'), read('longest')];
  if (shortest && longest) return { shortest, longest };
  const bore = read('bore');
  return bore && lengthLimits(overall, bore, unit, usualLengthRule(unit));
}

/** Overall length with its limits, or why they cannot be checked: that is worth a note, but no reason not to cut. */
function finishedLength(
  table: SheetTable<JobField>,
  row: number,
  unit: LengthUnit,
): { readonly overall?: Decimal; readonly limits?: LengthRange; readonly note?: string } {
  try {
    const column = table.columns.overall;
    const overall = lengthOfCell(cellOf(table, row, 'overall'), 'overall length', column?.unit ?? '', unit);
    return overall ? { overall, limits: limitsOf(table, row, overall, unit) } : {};
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { note: `length limits not checked: ${error.message}` };
  }
}

/** What the row's check of the assembly objects to; it is said beside the line, since hose that is cut is spent. */
function objection(table: SheetTable<JobField>, row: number): string | undefined {
  const cell = cellOf(table, row, 'check');
  if (typeof cell === 'object') return `its check is ${cell.error}`;
  const text = String(cell).trim();
  return text === '' || text.toUpperCase() === 'OK' ? undefined : `its check says: ${text}`;
}

function readLine(table: SheetTable<JobField>, row: number, unit: LengthUnit, step: Decimal): CutLine | undefined {
  const length = (field: JobField, label: string) =>
    lengthOfCell(cellOf(table, row, field), label, table.columns[field]?.unit ?? '', unit);
  const hose = textOf(table, row, 'hose');
  const wanted = length('cutLength', 'cut length');
  if (hose === '' && !wanted) return undefined;
  if (hose === '') throw new TradeError('blank', 'hose', 'is blank', 'fill it in');
  if (!wanted) throw new TradeError('blank', 'cut length', 'is blank', 'fill it in');
  const quantity = countOfCell(cellOf(table, row, 'quantity'), 'quantity');
  if (quantity === undefined) throw new TradeError('blank', 'quantity', 'is blank', 'fill it in');
  const { overall, limits, note } = finishedLength(table, row, unit);
  const { cutLength, isOtherWay } = benchCut(wanted, step, unit, overall && limits && { overall, limits });
  const number = String(sheetRow(table, row));
  const otherWay = `cut ${lengthText(cutLength, unit)} for ${lengthText(wanted, unit)}: the nearer step would miss the length limits`;
  const notes = [objection(table, row), isOtherWay ? otherWay : note];
  return {
    row: sheetRow(table, row),
    line: textOf(table, row, 'line') || `row ${number}`,
    label: textOf(table, row, 'label'),
    hose,
    quantity,
    wanted,
    cutLength,
    overall,
    limits,
    note: notes.filter(Boolean).join('; ') || undefined,
  };
}

/**
 * Reads the lines to cut.
 * @param unit unit of all lengths that come out
 * @param step what the bench can cut, in `unit`
 * @param picked rows of the sheet as it shows them; undefined = every row of the table
 */
export function readCutLines(
  table: SheetTable<JobField>,
  unit: LengthUnit,
  step: Decimal,
  picked?: ReadonlySet<number>,
): CutLines {
  const lines: CutLine[] = [];
  const problems: RowProblem[] = [];
  for (const row of dataRows(table)) {
    if (picked && !picked.has(sheetRow(table, row))) continue;
    try {
      const line = readLine(table, row, unit, step);
      if (line && line.quantity > 0) lines.push(line);
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      problems.push({ row: sheetRow(table, row), sentence: error.message });
    }
  }
  return { lines, problems };
}
