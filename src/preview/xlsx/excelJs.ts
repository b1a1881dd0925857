/** The .xlsx library, loaded when a file is first opened or saved. */
export async function loadExcelJs(): Promise<typeof import('exceljs')> {
  const loaded = (await import('exceljs')) as typeof import('exceljs') & { default?: typeof import('exceljs') };
  return loaded.default ?? loaded;
}
