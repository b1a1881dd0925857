import type { Workbook } from '../../workbook/workbook';
import { isSameCrimpSheet } from '../crimps/isSameCrimpSheet';
import { readCrimpSheet, type CrimpSheet } from '../crimps/crimpSheet';
import { readMachineChanges } from '../crimps/readMachineChanges';
import { today } from '../table/today';
import type { AnalysisContext } from './analysisOf';
import { recallAnalysis } from './analysisMemory';

/** A sheet of crimps with what the workbook says besides. */
export interface AnalysisSource {
  readonly sheet: CrimpSheet;
  readonly context: AnalysisContext;
}

/** Reads the crimps around the selection, the machines' logs and what was decided; undefined where there is no table. */
export async function readAnalysis(workbook: Workbook): Promise<AnalysisSource | undefined> {
  const [sheet, changes, memory] = await Promise.all([
    readCrimpSheet(workbook),
    readMachineChanges(workbook),
    recallAnalysis(workbook),
  ]);
  return sheet?.own && { sheet, context: { changes, memory, today: today() } };
}

/** Whether two looks at the workbook give the same analysis. */
export const isSameAnalysis = (a: AnalysisSource, b: AnalysisSource): boolean =>
  JSON.stringify(a.context) === JSON.stringify(b.context) && isSameCrimpSheet(a.sheet, b.sheet);
