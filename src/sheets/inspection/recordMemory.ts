import * as v from 'valibot';
import { recalled, type WorkbookMemory } from '../table/recalled';
import { FRESH_FIELDS, type RecordFields } from './inspectionRecord';

const KEY = 'records';
const Stored = v.record(v.string(), v.string());

/** What is of one workbook's work: its lots, its customer, and what it was measured with. The next workbook begins without it. */
export const OF_WORKBOOK = [
  'customer',
  'number',
  'hoseLot',
  'hoseMade',
  'fittingLot',
  'caliper',
  'caliperChecked',
  'gauge',
  'gaugeChecked',
] as const satisfies readonly (keyof RecordFields)[];

export type WorkbookRecordFields = Pick<RecordFields, (typeof OF_WORKBOOK)[number]>;

/** The fields of a workbook, those that are not said blank. */
export const fieldsOfWorkbook = (said: Readonly<Partial<Record<string, string>>>): WorkbookRecordFields =>
  Object.fromEntries(OF_WORKBOOK.map(name => [name, said[name] ?? FRESH_FIELDS[name]])) as unknown as WorkbookRecordFields;

/** What was typed for the records of a workbook. */
export const recallRecordFields = async (workbook: Pick<WorkbookMemory, 'recall'>): Promise<WorkbookRecordFields> =>
  fieldsOfWorkbook(await recalled(workbook, KEY, Stored, {}));

/** Remembers with the workbook what is typed for its records. */
export function rememberRecordFields(workbook: Pick<WorkbookMemory, 'remember'>, fields: WorkbookRecordFields): Promise<void> {
  const isBlank = OF_WORKBOOK.every(name => fields[name].trim() === '');
  return workbook.remember(KEY, isBlank ? undefined : JSON.stringify(fieldsOfWorkbook(fields)));
}
