import { Decimal } from '../../core/units/decimal';
import { typedShare } from '../../sheets/table/typedFields';
import type { MachineNow } from '../../sheets/week/orderOfJobs';

/** Fields of the order of work before anybody has touched them. */
export const FRESH_ORDER = { machine: '', die: '', dial: '', share: '0.5' };
export type OrderFields = { -readonly [Key in keyof typeof FRESH_ORDER]: string };

/** What the fields say of the machine. */
export function machineNow(fields: OrderFields): MachineNow {
  const { machine, die, dial } = fields;
  return { machine, die, dial: dial.trim(), share: typedShare(fields.share).value ?? new Decimal(0) };
}
