import type { CustomData, IWorkbookData, Workbook } from '@univerjs/core';
import type { CustomProperties, FileProperty } from '../xlsx/customProperties';

/** How a workbook's data keep them. */
interface Kept {
  readonly remembered?: Readonly<Record<string, string>>;
  readonly fileProperties?: readonly FileProperty[];
}

/** What is remembered with a file, and other custom properties of it, as a workbook's data keep them. */
export function customOf({ remembered, others }: CustomProperties): CustomData {
  return { remembered: Object.fromEntries(remembered), fileProperties: others } satisfies Kept;
}

/** The way back. */
export function propertiesOf({ custom }: Pick<IWorkbookData, 'custom'>): CustomProperties {
  const { remembered = {}, fileProperties = [] } = (custom ?? {}) as Kept;
  return { remembered: new Map(Object.entries(remembered)), others: fileProperties };
}

/** A text remembered with the workbook that is open. */
export function recallFrom(workbook: Workbook, key: string): string | undefined {
  return propertiesOf({ custom: workbook.getCustomMetadata() }).remembered.get(key);
}

/** Remembers a text with the workbook that is open; undefined forgets it. */
export function rememberIn(workbook: Workbook, key: string, text: string | undefined): void {
  const { remembered, others } = propertiesOf({ custom: workbook.getCustomMetadata() });
  const texts = new Map(remembered);
  if (text === undefined) texts.delete(key);
  else texts.set(key, text);
  workbook.setCustomMetadata({ ...workbook.getCustomMetadata(), ...customOf({ remembered: texts, others }) });
}
