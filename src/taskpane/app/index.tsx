import { createRoot } from 'react-dom/client';
import { excelWorkbook } from '../../host/excel/excelWorkbook';
import type { FunctionMetadata } from '../../workbook/functionMetadata';
import { keepFocus } from '../controls/keepFocus';
import { FunctionsVersion } from './FunctionsVersion';
import { OutsideExcel, type Absence } from './OutsideExcel';
import { TaskPane } from './TaskPane';

/** Put in by the build. */
declare const VERSION: string;

const OFFICE_READY_MS = 8000;

/** Waits for Office; undefined where this is Excel. */
async function absence(): Promise<Absence | undefined> {
  if (typeof Office === 'undefined' || typeof Office.onReady !== 'function') return 'noOfficeJs';
  const late = new Promise<undefined>(resolve => setTimeout(() => resolve(undefined), OFFICE_READY_MS));
  const info = await Promise.race([Office.onReady(), late]);
  return info?.host === Office.HostType.Excel ? undefined : 'notExcel';
}

/** functions.json; without it the pane still shows sentences and verdicts, only no explanations. */
async function functionMetadata(): Promise<readonly FunctionMetadata[]> {
  try {
    return ((await (await fetch('functions.json')).json()) as { functions: FunctionMetadata[] }).functions;
  } catch {
    return [];
  }
}

const page = document.getElementById('pane')!;
keepFocus(page);
const root = createRoot(page);
const missing = await absence();
root.render(
  missing ? (
    <OutsideExcel absence={missing} />
  ) : (
    <TaskPane workbook={excelWorkbook()} functions={await functionMetadata()} notice={<FunctionsVersion version={VERSION} />} />
  ),
);
