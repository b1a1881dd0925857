import type { Workbook } from '../../workbook/workbook';
import { thisMoment } from '../table/today';
import type { Writing } from '../print/writing';
import type { Decimal } from '../../core/units/decimal';
import { cellNumberOf, type CheckForm, type CheckResult } from './machineCheck';
import { asksForScrew } from './screwTurned';
import { logEntry } from './machineLog';

/** A check as it goes into the machine's log. */
export interface LoggedCheck {
  readonly form: CheckForm;
  readonly result: CheckResult;
  readonly by: string;
  readonly note: string;
  /** Turns of the calibration screw that were made after it, positive = tighter; 0 where it was not turned. */
  readonly turned: Decimal;
}

/** What was done after the advice. */
function doneSentence({ result, turned }: LoggedCheck): string {
  if (!asksForScrew(result)) return '';
  if (turned.isZero()) return 'The screw was not turned.';
  const way = turned.isNegative() ? 'looser' : 'tighter';
  return `The screw was turned ${cellNumberOf(turned.abs())} turns ${way}.`;
}

/**
 * What writes a check into the log, by whom it was done and with what note. Its turns are those that were made: a reader of the log counts
 * them as a change of the machine. What was only advised is in the note.
 */
export async function checkWriting(workbook: Workbook, check: LoggedCheck): Promise<Writing> {
  const { form, result, by, note, turned } = check;
  const { expected, readings, mean, deviation, perTurn } = result;
  const logged = await logEntry(workbook, {
    date: thisMoment(),
    machine: form.machine.trim(),
    kind: 'Check',
    what: form.setUp.trim(),
    unit: form.unit,
    expected: expected.toNumber(),
    readings: readings.map(String).join('  '),
    mean: cellNumberOf(mean),
    deviation: cellNumberOf(deviation),
    perTurn: perTurn?.toNumber(),
    turns: turned.isZero() ? undefined : cellNumberOf(turned),
    by: by.trim(),
    note: [result.sentence, doneSentence(check), note.trim()].filter(Boolean).join(' '),
  });
  const message = `Written to Machine log, row ${logged.row}${logged.isNewSheet ? '; the sheet is new' : ''}.`;
  return { changes: logged.changes, undo: logged.undo, message };
}
