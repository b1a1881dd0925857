import { LocaleType, LogLevel, Univer, mergeLocales, type IWorkbookData } from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { CalculationMode, UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import enUS from '@univerjs/preset-sheets-core/locales/en-US';
import { UniverSheetsConditionalFormattingPreset } from '@univerjs/preset-sheets-conditional-formatting';
import formatsEnUS from '@univerjs/preset-sheets-conditional-formatting/locales/en-US';
import { UniverSheetsFilterPreset } from '@univerjs/preset-sheets-filter';
import filterEnUS from '@univerjs/preset-sheets-filter/locales/en-US';
import { UniverSheetsSortPreset } from '@univerjs/preset-sheets-sort';
import sortEnUS from '@univerjs/preset-sheets-sort/locales/en-US';
import { defaultTheme } from '@univerjs/themes';
import '@univerjs/preset-sheets-core/lib/index.css';
import '@univerjs/preset-sheets-conditional-formatting/lib/index.css';
import '@univerjs/preset-sheets-filter/lib/index.css';
import '@univerjs/preset-sheets-sort/lib/index.css';
import type { BenchrowHost } from '../../host/catalogue/hostCatalogueSource';
import { workbookCatalogueSource } from '../../workbook/workbookCatalogueSource';
import type { CellValue } from '../../workbook/workbook';
import { calculateAll } from '../host/calculateAll';
import { functionHelp } from '../host/functionHelp';
import { CellSource } from '../host/cellSource';
import { onChanged } from '../host/onChanged';
import { onContent } from '../host/onContent';
import type { FunctionsFile } from '../../workbook/functionMetadata';
import { hostFunctions, type HostFunctions } from '../host/hostFunctions';
import { savedWorkbook } from '../host/savedWorkbook';
import { secondPass } from '../host/secondPass';
import { steadyDependencies } from '../host/steadyDependencies';
import type { RangeAddress } from '../../workbook/workbook';
import { UniverWorkbook } from '../univerWorkbook';
import type { OpenedWorkbook } from '../xlsx/readXlsx';
import { writeXlsx } from '../xlsx/writeXlsx';
import { allOurSuggestions } from './allOurSuggestions';
import { hiddenMenus } from './hiddenMenus';
import type { PageFunctions } from './pageFunctions';
import { cellAddress } from '../../workbook/a1';

/** A cell that somebody selected or points at. */
export interface NotedCell {
  readonly address: string;
  readonly value: CellValue;
  readonly formula: string;
}

/** The spreadsheet of the page with one workbook open. */
export interface Spreadsheet {
  readonly workbook: UniverWorkbook;
  /** Selects a cell, without scrolling to it. */
  select(at: RangeAddress): void;
  /** Calculates every formula. */
  calculate(): Promise<void>;
  /** The workbook as an .xlsx file. */
  save(): Promise<Uint8Array>;
  /** Tells which cell is selected, at once and whenever that or its content changes. */
  onSelected(listener: (cell: NotedCell) => void): () => void;
  /** Tells when something changed that belongs into a file. */
  onChanged(listener: () => void): () => void;
  /** The workbook as it stands, to be opened again. */
  snapshot(): OpenedWorkbook;
  /** Tells which cell the pointer is over. */
  onPointedAt(listener: (cell: NotedCell) => void): () => void;
  dispose(): void;
}

/** Whether the system is dark; the spreadsheet goes with the page around it. */
const dark = matchMedia('(prefers-color-scheme: dark)');

function startUniver(container: HTMLElement, file: FunctionsFile, { engineFunctions }: HostFunctions): Univer {
  const univer = new Univer({
    theme: defaultTheme,
    darkMode: dark.matches,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(enUS, formatsEnUS, filterEnUS, sortEnUS) },
    logLevel: LogLevel.ERROR,
  });
  const preset = UniverSheetsCorePreset({
    container,
    ribbonType: 'simple',
    menu: hiddenMenus,
    footer: { menus: false, statisticBar: true, zoomSlider: true },
    formula: {
      function: engineFunctions as never,
      description: functionHelp(file.functions),
      // The page shows the values of the file first, then calculates.
      initialFormulaComputing: CalculationMode.NO_CALCULATION,
    },
  } as Parameters<typeof UniverSheetsCorePreset>[0]);
  const others = [UniverSheetsConditionalFormattingPreset(), UniverSheetsFilterPreset(), UniverSheetsSortPreset()];
  for (const plugin of [preset, ...others].flatMap(({ plugins }) => plugins)) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0] as never, plugin[1] as never);
    else univer.registerPlugin(plugin as never);
  }
  return univer;
}

/** Opens a workbook in the page's spreadsheet. */
export function openSpreadsheet(
  container: HTMLElement,
  opened: OpenedWorkbook,
  { file, associated }: PageFunctions,
): Spreadsheet {
  const functions = hostFunctions(file, associated);
  const univer = startUniver(container, file, functions);
  const api = FUniver.newAPI(univer);
  api.createWorkbook({ ...opened.data, locale: LocaleType.EN_US } satisfies IWorkbookData);
  secondPass(univer);
  steadyDependencies(univer);
  allOurSuggestions(univer);
  const workbook = new UniverWorkbook(univer, api);
  const followSystem = () => api.toggleDarkMode(dark.matches);
  dark.addEventListener('change', followSystem);
  const host: BenchrowHost = { catalogueSource: workbookCatalogueSource(workbook) };
  Object.assign(globalThis, { benchrowHost: host });
  const active = () => api.getActiveWorkbook()!;
  const noted = (row: number, column: number): NotedCell => {
    const source = new CellSource(univer, active().getWorkbook(), active().getActiveSheet().getSheet());
    return { address: cellAddress({ row, column }), value: source.value(row, column), formula: source.formula(row, column) };
  };
  return {
    workbook,
    select({ sheet, address }) {
      const found = active().getSheetByName(sheet);
      if (!found) return;
      active().setActiveSheet(found);
      found.getRange(address).activate();
    },
    calculate: () => calculateAll(api, true),
    async save() {
      // What was entered just now may still be calculating: a file never holds values that are behind their formulas.
      await calculateAll(api, true);
      return writeXlsx(savedWorkbook(univer, api, opened.cells));
    },
    onSelected(listener) {
      const tell = () => {
        const cell = api.getActiveWorkbook()?.getActiveSheet().getActiveCell();
        if (cell) listener(noted(cell.getRow(), cell.getColumn()));
      };
      tell();
      return onContent(api, tell);
    },
    onChanged: listener => onChanged(api, listener),
    snapshot: () => ({ ...opened, data: active().save() }),
    onPointedAt(listener) {
      const subscription = api.addEvent(api.Event.CellPointerMove, ({ row, column }) => listener(noted(row, column)));
      return () => subscription.dispose();
    },
    dispose() {
      dark.removeEventListener('change', followSystem);
      functions.cancelRunning();
      univer.dispose();
    },
  };
}
