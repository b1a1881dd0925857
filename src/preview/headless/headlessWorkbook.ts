import { Univer, type IWorkbookData, type LocaleType } from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { UniverFormulaEnginePlugin } from '@univerjs/engine-formula';
import { UniverSheetsPlugin } from '@univerjs/sheets';
import { CalculationMode, UniverSheetsFormulaPlugin } from '@univerjs/sheets-formula';
import '@univerjs/sheets/facade';
import '@univerjs/engine-formula/facade';
import '@univerjs/sheets-formula/facade';
import { calculateAll } from '../host/calculateAll';
import type { HostFunctions } from '../host/hostFunctions';
import { secondPass } from '../host/secondPass';
import { steadyDependencies } from '../host/steadyDependencies';

/** A workbook that calculates without a page. */
export interface HeadlessWorkbook {
  readonly api: FUniver;
  readonly univer: Univer;
  /** Calculates every formula; resolves when the results stand in the cells. */
  calculate(): Promise<void>;
  dispose(): void;
}

/** Opens a workbook's data in the spreadsheet's engine, without page and without calculating. */
export function headlessWorkbook(data: IWorkbookData, functions: HostFunctions): HeadlessWorkbook {
  const univer = new Univer({ locale: 'enUS' as LocaleType, locales: { enUS: {} } });
  univer.registerPlugin(UniverFormulaEnginePlugin, { function: functions.engineFunctions });
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin, { initialFormulaComputing: CalculationMode.NO_CALCULATION });
  const api = FUniver.newAPI(univer);
  api.createWorkbook(data);
  secondPass(univer);
  steadyDependencies(univer);
  return {
    api,
    univer,
    calculate: () => calculateAll(api, false),
    dispose() {
      functions.cancelRunning();
      univer.dispose();
    },
  };
}
