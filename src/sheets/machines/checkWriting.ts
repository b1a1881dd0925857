import { TURN_PLACES } from '../../core/units/decimalPlaces';
import type { Workbook } from '../../workbook/workbook';
import { thisMoment } from '../table/today';
import type { Writing } from '../print/writing';
import { cellNumberOf, type CheckForm, type CheckResult } from './machineCheck';
import { logEntry } from './machineLog';

/** A check as it goes into the machine's log. */
export interface LoggedCheck {
  readonly form: CheckForm;
  readonly result: CheckResult;
  readonly by: string;
  readonly note: string;
}

/** What writes a check into the log, by whom it was done and with what note. */
export async function checkWriting(workbook: Workbook, { form, result, by, note }: LoggedCheck): Promise<Writing> {
  const { expected, readings, mean, deviation, perTurn, turns } = result;
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
    turns: turns && !result.isLeftAlone ? cellNumberOf(turns, TURN_PLACES) : undefined,
    by: by.trim(),
    note: [result.sentence, note.trim()].filter(Boolean).join(' '),
  });
  const message = `Written to Machine log, row ${logged.row}${logged.isNewSheet ? '; the sheet is new' : ''}.`;
  return { changes: logged.changes, undo: logged.undo, message };
}
