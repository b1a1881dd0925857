import { TradeError } from '../../core/tradeError';
import { lengthIn, type Length } from '../../core/units/lengthUnit';
import { benchCut } from '../jobs/benchRounding';
import type { CutLine, LengthRange } from '../jobs/cutLine';
import { quantityOf, type JobLine } from '../jobs/jobLine';
import { lengthLimitsOf } from '../jobs/lengthLimitsOf';
import { lengthText } from '../table/lengthText';
import type { CutSettings } from './cutSettings';

/** Limits, or why they cannot be checked: that is worth a note, but no reason not to cut. */
function limitsOf(line: JobLine, { unit }: CutSettings): { readonly limits?: LengthRange | undefined; readonly note?: string } {
  try {
    return { limits: lengthLimitsOf(line, unit) };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { note: `length limits not checked: ${error.message}` };
  }
}

/**
 * A job line as it is cut: its length in the plan's unit, exactly, then rounded to what the bench can cut.
 * @throws TradeError where no step of the bench keeps the finished length within its limits
 */
export function cutLineOf(line: JobLine, cut: Length, settings: CutSettings): CutLine {
  const { unit, step } = settings;
  const wanted = lengthIn(cut, unit);
  const overall = line.overall && lengthIn(line.overall, unit);
  const { limits, note } = limitsOf(line, settings);
  const { cutLength, isOtherWay } = benchCut(wanted, step, unit, overall && limits && { overall, limits });
  const otherWay = `cut ${lengthText(cutLength, unit)} for ${lengthText(wanted, unit)}: the nearer step would miss the length limits`;
  const notes = [...line.notes, isOtherWay ? otherWay : note].filter(Boolean);
  return {
    row: line.row,
    line: line.line,
    label: line.label,
    hose: line.hose,
    quantity: quantityOf(line),
    wanted,
    cutLength,
    overall,
    limits,
    note: notes.join('; ') || undefined,
  };
}
