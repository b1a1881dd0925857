const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
/** The browser reads the address after the click has returned. */
const KEPT_MS = 10_000;

/**
 * Whether this page can hand a file to downloads. In Excel for Mac a click on a download does nothing, without an error (DESIGN.md, "Which
 * Excel, and how it behaves").
 */
export function canDownload(): boolean {
  if (typeof Office === 'undefined' || !Office.context?.platform) return typeof document !== 'undefined';
  return Office.context.platform !== Office.PlatformType.Mac && Office.context.platform !== Office.PlatformType.iOS;
}

/** Hands an .xlsx file to the browser's downloads. */
export function downloadFile(bytes: Uint8Array, name: string): void {
  const url = URL.createObjectURL(new Blob([bytes as BlobPart], { type: XLSX_TYPE }));
  const link = Object.assign(document.createElement('a'), { href: url, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS);
}
