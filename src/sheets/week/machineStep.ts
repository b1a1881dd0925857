import type { Catalogue } from '../../core/catalogue/catalogue';
import { machineDescription } from '../../core/catalogue/machineDial';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';

/** Change of diameter per digit of a machine, as table Machines has it; undefined where it does not say. */
export function machineStep(catalogue: Catalogue | undefined, machine: string, unit: LengthUnit): Decimal | undefined {
  if (!catalogue || machine.trim() === '') return undefined;
  try {
    const step = machineDescription(catalogue, machine)?.step;
    return step === undefined ? undefined : lengthIn({ value: new Decimal(step), unit: catalogue.units.diameter }, unit);
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}
