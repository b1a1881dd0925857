import { Decimal } from '../../core/units/decimal';
import { numberFromText } from '../../core/units/numberText';
import type { MachineNow } from '../../sheets/week/orderOfJobs';

/** Fields of the order of work before anybody has touched them. */
export const FRESH_ORDER = { machine: '', die: '', dial: '', share: '0.5' };
export type OrderFields = { -readonly [Key in keyof typeof FRESH_ORDER]: string };

/** The share of the tolerance that one dial may cost; undefined where the field says none from 0 to 1. */
export function shareOf({ share }: OrderFields): Decimal | undefined {
  const typed = numberFromText(share)?.value;
  return typed?.gte(0) && typed.lte(1) ? typed : undefined;
}

/** What the fields say of the machine. */
export function machineNow(fields: OrderFields): MachineNow {
  const { machine, die, dial } = fields;
  return { machine, die, dial: dial.trim(), share: shareOf(fields) ?? new Decimal(0) };
}
