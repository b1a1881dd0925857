import type { Catalogue } from '../../core/catalogue/catalogue';
import { machineDescription } from '../../core/catalogue/machineDial';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { Decimal as DecimalNumber } from '../../core/units/decimal';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import { catalogueDiameter } from '../crimps/crimpData';
import type { SettingsAbove } from '../crimps/settingsAbove';
import type { Sourced } from '../crimps/crimpRow';

/** What is known of a machine; diameters in the measurements' unit. */
export interface MachineFacts {
  /** Change of diameter per digit, positive where a higher number crimps tighter. */
  readonly step?: Sourced | undefined;
  readonly perTurn?: Sourced | undefined;
  readonly lowest?: Decimal | undefined;
  readonly highest?: Decimal | undefined;
  readonly largestMove?: Decimal | undefined;
}

/** Numbers of the machine that were typed into the pane. */
export interface TypedFacts {
  readonly step?: Decimal | undefined;
  readonly perTurn?: Decimal | undefined;
}

function describe(catalogue: Catalogue | undefined, machine: string, die: string) {
  if (!catalogue || machine === '') return undefined;
  try {
    return machineDescription(catalogue, machine, die || undefined);
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

/** What the Machines table says of a machine, else what stands above the readings, else what was typed. */
export function machineFacts(
  catalogue: Catalogue | undefined,
  unit: LengthUnit,
  above: SettingsAbove,
  typed: TypedFacts,
): (machine: string, die: string) => MachineFacts {
  return (machine, die) => {
    const row = describe(catalogue, machine, die);
    const number = (name: 'step' | 'perTurn'): Sourced | undefined => {
      const listed = catalogue && row?.[name] !== undefined ? catalogueDiameter(catalogue, row[name], unit) : undefined;
      if (listed && !listed.isZero()) return { value: listed, from: 'table Machines' };
      const stated = above.lengths[name];
      if (stated && !stated.value.isZero()) return { value: lengthIn(stated, unit), from: 'above the readings' };
      return typed[name] && { value: typed[name], from: 'as entered' };
    };
    const digits = (listed: number | undefined, stated: Decimal | undefined) =>
      listed === undefined ? stated : new DecimalNumber(listed);
    return {
      step: number('step'),
      perTurn: number('perTurn'),
      lowest: digits(row?.lowest, above.dials.lowest),
      highest: digits(row?.highest, above.dials.highest),
      largestMove: digits(row?.largestMove, above.dials.largestMove),
    };
  };
}
