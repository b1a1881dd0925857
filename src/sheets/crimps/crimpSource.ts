import type { Catalogue } from '../../core/catalogue/catalogue';
import { crimpSetup } from '../../core/catalogue/crimpSetup';
import { machineDescription } from '../../core/catalogue/machineDial';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { convertMeasure, measureUnit } from '../../core/units/measureUnit';
import type { Sourced } from './entrySlot';

/** What the catalogue says of a crimp; lengths in the unit asked for. */
export interface CrimpData {
  readonly die?: string | undefined;
  readonly target?: Sourced | undefined;
  readonly tolerance?: Sourced | undefined;
  readonly maxSpread?: Sourced | undefined;
  readonly dial?: Sourced | undefined;
  readonly step?: Sourced | undefined;
  readonly lowest?: Sourced | undefined;
  readonly highest?: Sourced | undefined;
  readonly largestMove?: Sourced | undefined;
  /** Why there is nothing. */
  readonly problem?: string | undefined;
}

const PLACES = { mm: 4, in: 6 } as const;

function lengthFrom(catalogue: Catalogue, value: number | undefined, unit: LengthUnit, from: string): Sourced | undefined {
  if (value === undefined) return undefined;
  const [own, wanted] = [catalogue.units.diameter, measureUnit('length', unit)!];
  const length = new Decimal(value);
  if (own.symbol === wanted.symbol) return { value: length, from };
  return { value: convertMeasure(length, own, wanted).toDecimalPlaces(PLACES[unit]), from };
}

const plain = (value: number | undefined, from: string) =>
  value === undefined ? undefined : { value: new Decimal(value), from };

function attempt<T>(work: () => T): { readonly found?: T; readonly problem?: string } {
  try {
    return { found: work() };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { problem: error.message };
  }
}

/** Looks a crimp and its machine up; what is not there stays undefined, with the reason. */
export function crimpData(
  catalogue: Catalogue,
  hose: string,
  fitting: string,
  machine: string,
  unit: LengthUnit,
  die?: string,
): CrimpData {
  const named = machine === '' ? undefined : machine;
  const hasPair = hose !== '' && fitting !== '';
  const { found: setup, problem } = hasPair ? attempt(() => crimpSetup(catalogue, hose, fitting, named)) : {};
  const usedDie = setup?.die ?? (die || undefined);
  const { found: row, problem: unknown } = named ? attempt(() => machineDescription(catalogue, named, usedDie)) : {};
  return {
    die: setup?.die,
    target: lengthFrom(catalogue, setup?.crimpDiameter, unit, 'Catalogue'),
    tolerance: lengthFrom(catalogue, setup?.tolerance, unit, 'Catalogue'),
    maxSpread: lengthFrom(catalogue, setup?.crimp.largestSpread, unit, 'Catalogue'),
    dial: plain(setup?.dial, setup?.source === 'MACHINE' ? 'Machines' : 'Catalogue'),
    step: lengthFrom(catalogue, row?.step, unit, 'Machines'),
    lowest: plain(row?.lowest, 'Machines'),
    highest: plain(row?.highest, 'Machines'),
    largestMove: plain(row?.largestMove, 'Machines'),
    problem: problem ?? unknown,
  };
}
