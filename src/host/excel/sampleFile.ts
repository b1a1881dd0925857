import { refusalOf } from './run';

/** Where the build puts the workbook to begin with, beside the pane. */
const FILE = 'samples/workshop.xlsx';
/** Bytes made text at once: a call takes only so many arguments. */
const AT_ONCE = 0x8000;

/** Address of the sample workbook, as a browser opens it. */
export const sampleAddress = (): string => new URL(FILE, document.baseURI).href;

/** Whether this Excel opens a new workbook for an add-in. Source: Excel.createWorkbook, requirement set ExcelApi 1.8. */
export function canOpenSample(): boolean {
  if (typeof Excel === 'undefined' || typeof Excel.createWorkbook !== 'function') return false;
  return Office.context.requirements.isSetSupported('ExcelApi', '1.8');
}

function base64Of(bytes: Uint8Array): string {
  let text = '';
  for (let first = 0; first < bytes.length; first += AT_ONCE) {
    text += String.fromCharCode(...bytes.subarray(first, first + AT_ONCE));
  }
  return btoa(text);
}

/**
 * Opens a copy of the sample workbook in a new window; the pane stays with the workbook it has. Excel on the web asks first (OfficeDev/office-js
 * issue 4031), and has opened nothing without an error for a time (issue 3646): whoever calls this offers the file itself, too.
 * Source: "Work with workbooks using the Excel JavaScript API", Create a workbook
 * (learn.microsoft.com/office/dev/add-ins/excel/excel-add-ins-workbooks).
 * @throws Error with a sentence where the file does not load, or Excel refuses
 */
export async function openSample(): Promise<void> {
  const answer = await fetch(sampleAddress());
  if (!answer.ok) throw new Error(`The sample did not load (${answer.status}).`);
  const base64 = base64Of(new Uint8Array(await answer.arrayBuffer()));
  try {
    await Excel.createWorkbook(base64);
  } catch (error) {
    throw refusalOf(error);
  }
}
