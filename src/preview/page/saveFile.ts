const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Hands a file to the browser's downloads. */
export function saveFile(bytes: Uint8Array, name: string): void {
  const url = URL.createObjectURL(new Blob([bytes as BlobPart], { type: XLSX_TYPE }));
  const link = Object.assign(document.createElement('a'), { href: url, download: name });
  link.click();
  // The browser reads the address after this call returns.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
