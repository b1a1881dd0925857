import * as v from 'valibot';
import { partKey } from '../../core/catalogue/partName';
import { momentNumber } from '../../core/units/sheetDate';
import type { MeasuredCrimp } from '../crimps/crimpRow';
import { recalled, type WorkbookMemory } from '../table/recalled';

const KEY = 'analysis';

const Stored = v.object({
  leftOut: v.array(v.string()),
  oneMachine: v.array(v.string()),
  fromDay: v.record(v.string(), v.string()),
});

/** What somebody decided about the crimps of a workbook. */
export interface AnalysisMemory {
  /** Crimps that are left out for good, as `crimpMark`. */
  readonly leftOut: readonly string[];
  /** Lists of crimps that are of one machine though they look like two, as `listMark`. */
  readonly oneMachine: readonly string[];
  /** By sheet: crimps before this day do not count, as typed. */
  readonly fromDay: Readonly<Record<string, string>>;
}

export const NOTHING_DECIDED: AnalysisMemory = { leftOut: [], oneMachine: [], fromDay: {} };

/** What was decided so far. */
export const recallAnalysis = (workbook: Pick<WorkbookMemory, 'recall'>): Promise<AnalysisMemory> =>
  recalled(workbook, KEY, Stored, NOTHING_DECIDED);

/** Remembers decisions with the workbook. */
export function rememberAnalysis(workbook: Pick<WorkbookMemory, 'remember'>, memory: AnalysisMemory): Promise<void> {
  const isNothing = memory.leftOut.length + memory.oneMachine.length + Object.keys(memory.fromDay).length === 0;
  return workbook.remember(KEY, isNothing ? undefined : JSON.stringify(memory));
}

/** Names a crimp by what its row says, so that it is known again wherever the row goes; another reading makes it another crimp. */
export function crimpMark({ sheet, title, end, combination, date, readings }: MeasuredCrimp): string {
  return [sheet, title, end, partKey(combination), date ?? '', readings.join(' ')].join('|');
}

/** Names the crimps of a machine on a sheet. */
export const listMark = (sheet: string, machine: string): string => `${sheet}|${partKey(machine)}`;

/** The first day that counts on a sheet; undefined where none is set or it cannot be read. */
export function fromDayOf({ fromDay }: AnalysisMemory, sheet: string): number | undefined {
  const text = fromDay[sheet];
  return text === undefined ? undefined : momentNumber(text);
}

/** A list with something in it, or without it. */
export const withMark = (marks: readonly string[], mark: string, isIn: boolean): readonly string[] =>
  isIn ? [...new Set([...marks, mark])] : marks.filter(each => each !== mark);
