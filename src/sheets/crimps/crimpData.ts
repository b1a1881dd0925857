import type { Catalogue } from '../../core/catalogue/catalogue';
import { crimpSetup } from '../../core/catalogue/crimpSetup';
import { machineDescription } from '../../core/catalogue/machineDial';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import type { Sourced } from './crimpRow';

/** What the catalogue says of a crimp; lengths in the unit asked for, exactly. */
export interface CrimpData {
  readonly die?: string | undefined;
  readonly target?: Sourced | undefined;
  readonly tolerance?: Sourced | undefined;
  readonly largestSpread?: Sourced | undefined;
  readonly dial?: Sourced | undefined;
  /** The catalogue's dials are not for this machine, and it has none of its own. */
  readonly hasNoDial?: boolean | undefined;
  readonly step?: Sourced | undefined;
  readonly lowest?: Sourced | undefined;
  readonly highest?: Sourced | undefined;
  readonly largestMove?: Sourced | undefined;
  /** Why there is nothing. */
  readonly problem?: string | undefined;
}

/** A diameter of the catalogue in another unit, exactly. */
export function catalogueDiameter(catalogue: Catalogue, value: number, unit: LengthUnit): Decimal {
  return lengthIn({ value: new Decimal(value), unit: catalogue.units.diameter }, unit);
}

function attempt<T>(work: () => T): { readonly found?: T; readonly problem?: string } {
  try {
    return { found: work() };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { problem: error.message };
  }
}

const plain = (value: number | undefined, from: string) =>
  value === undefined ? undefined : { value: new Decimal(value), from };

/** Looks a crimp and its machine up; what is not there stays undefined, with the reason. */
export function crimpData(
  catalogue: Catalogue,
  hose: string,
  fitting: string,
  machine: string,
  unit: LengthUnit,
  die?: string,
): CrimpData {
  const length = (value: number | undefined, from: string): Sourced | undefined =>
    value === undefined ? undefined : { value: catalogueDiameter(catalogue, value, unit), from };
  const hasPair = hose !== '' && fitting !== '';
  const named = machine === '' ? undefined : machine;
  const { found: row, problem: unknown } = named ? attempt(() => machineDescription(catalogue, named, die || undefined)) : {};
  // A machine that is in no catalogue has no dial there, but the crimp's data are the same.
  const own = unknown ? undefined : named;
  const { found: setup, problem } = hasPair ? attempt(() => crimpSetup(catalogue, hose, fitting, own)) : {};
  const described =
    named && !unknown && setup ? attempt(() => machineDescription(catalogue, named, die || setup.die)).found : row;
  return {
    die: setup?.die,
    target: length(setup?.crimpDiameter, 'Catalogue'),
    tolerance: length(setup?.tolerance, 'Catalogue'),
    largestSpread: length(setup?.crimp.largestSpread, 'Catalogue'),
    dial: plain(setup?.dial, setup?.source === 'MACHINE' ? 'Machines' : 'Catalogue'),
    hasNoDial: setup?.source === 'NO DIAL',
    step: length(described?.step, 'Machines'),
    lowest: plain(described?.lowest, 'Machines'),
    highest: plain(described?.highest, 'Machines'),
    largestMove: plain(described?.largestMove, 'Machines'),
    problem: problem ?? unknown,
  };
}
