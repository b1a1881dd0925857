import { isSilentPane } from '../excel/isSilentPane';

const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
/** The browser reads the address after the click has returned. */
const KEPT_MS = 10_000;

/** Whether this page can hand a file to downloads. */
export const canDownload = (): boolean => typeof document !== 'undefined' && !isSilentPane();

/** Hands an .xlsx file to the browser's downloads. */
export function downloadFile(bytes: Uint8Array, name: string): void {
  const url = URL.createObjectURL(new Blob([bytes as BlobPart], { type: XLSX_TYPE }));
  const link = Object.assign(document.createElement('a'), { href: url, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS);
}
