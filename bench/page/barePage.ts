import { LocaleType, LogLevel, mergeLocales, Univer, type IWorkbookData } from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { UniverSheetsConditionalFormattingPreset } from '@univerjs/preset-sheets-conditional-formatting';
import { CalculationMode, UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import enUS from '@univerjs/preset-sheets-core/locales/en-US';
import { UniverSheetsFilterPreset } from '@univerjs/preset-sheets-filter';
import { UniverSheetsSortPreset } from '@univerjs/preset-sheets-sort';
import { defaultTheme } from '@univerjs/themes';
import '@univerjs/preset-sheets-core/lib/index.css';

/** What the benchmark's server holds beside this script. */
const CELLS = 'cells.json';

/** The spreadsheet library by itself: the same plugins and the same cells as the try-out page, and nothing else. */
async function open(): Promise<void> {
  const data = (await (await fetch(CELLS)).json()) as IWorkbookData;
  const univer = new Univer({
    theme: defaultTheme,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(enUS) },
    logLevel: LogLevel.ERROR,
  });
  const { plugins } = UniverSheetsCorePreset({
    container: document.getElementById('sheet')!,
    ribbonType: 'simple',
    footer: { menus: false, statisticBar: true, zoomSlider: true },
    formula: { initialFormulaComputing: CalculationMode.NO_CALCULATION },
  } as Parameters<typeof UniverSheetsCorePreset>[0]);
  const others = [UniverSheetsConditionalFormattingPreset(), UniverSheetsFilterPreset(), UniverSheetsSortPreset()];
  for (const plugin of [...plugins, ...others.flatMap(preset => preset.plugins)]) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0] as never, plugin[1] as never);
    else univer.registerPlugin(plugin as never);
  }
  FUniver.newAPI(univer).createWorkbook({ ...data, locale: LocaleType.EN_US });
}

void open();
