import * as v from 'valibot';
import type { Workbook } from '../../workbook/workbook';

/** The memory of a workbook: small texts that are kept in its file. */
export type WorkbookMemory = Pick<Workbook, 'recall' | 'remember'>;

/** What a workbook remembers under a key; `otherwise` where it remembers nothing there, or its file holds something else under our key. */
export async function recalled<T>(
  workbook: Pick<WorkbookMemory, 'recall'>,
  key: string,
  schema: v.GenericSchema<unknown, T>,
  otherwise: T,
): Promise<T> {
  const text = await workbook.recall(key);
  if (text === undefined) return otherwise;
  try {
    const parsed = v.safeParse(schema, JSON.parse(text));
    return parsed.success ? parsed.output : otherwise;
  } catch {
    return otherwise;
  }
}
