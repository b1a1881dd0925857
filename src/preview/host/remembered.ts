import type { CustomData, IWorkbookData, Workbook } from '@univerjs/core';

/** Where a workbook's data keep the texts remembered with it. */
interface WithRemembered {
  readonly remembered?: Readonly<Record<string, string>>;
}

/** Texts remembered with a workbook, by key. */
export function rememberedIn(data: Pick<IWorkbookData, 'custom'>): ReadonlyMap<string, string> {
  return new Map(Object.entries((data.custom as WithRemembered | undefined)?.remembered ?? {}));
}

/** A workbook's custom data with these texts in place of the ones before. */
export function withRemembered(custom: CustomData | undefined, texts: ReadonlyMap<string, string>): CustomData {
  return { ...custom, remembered: Object.fromEntries(texts) };
}

/** Remembers a text with the workbook that is open; undefined forgets it. */
export function rememberIn(workbook: Workbook, key: string, text: string | undefined): void {
  const texts = new Map(rememberedIn({ custom: workbook.getCustomMetadata() }));
  if (text === undefined) texts.delete(key);
  else texts.set(key, text);
  workbook.setCustomMetadata(withRemembered(workbook.getCustomMetadata(), texts));
}
