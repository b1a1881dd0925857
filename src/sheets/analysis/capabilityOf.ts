import { capability, type CapabilityIndex } from '../../core/quality/capability';
import { TradeError } from '../../core/tradeError';
import type { CombinationReadings, MachineReadings } from './analyseReadings';
import { deviationOf, type JudgedCrimp } from './judgedCrimp';

/** Capability of deviations, or why there is none. */
export type CapabilityOf = { readonly indices: readonly CapabilityIndex[] } | { readonly reason: string };

function indicesOf(subgroups: readonly (readonly number[])[], tolerance: number): CapabilityOf {
  try {
    return { indices: capability({ subgroups, lower: -tolerance, upper: tolerance, target: 0 }) };
  } catch (error) {
    if (error instanceof TradeError) return { reason: error.message };
    throw error;
  }
}

/**
 * Capability of one combination's crimps between − and + tolerance around their target.
 * @param tolerance in the unit of the crimps
 */
export function capabilityOf(crimps: readonly JudgedCrimp[], tolerance: number): CapabilityOf {
  return indicesOf(
    crimps.map(crimp => [deviationOf(crimp)]),
    tolerance,
  );
}

/** What is true of all combinations together. */
export interface AllCapability {
  /** As if every setting were right: the scatter inside the combinations alone. */
  readonly cp: CapabilityIndex;
  /** As wide as everything scatters, wherever its middle lies. */
  readonly pp: CapabilityIndex;
  /** What comes out with the settings as they are. */
  readonly ppk: CapabilityIndex;
  /** The combination with the smallest Cpk, and that; undefined where there is one combination only, or none has enough crimps. */
  readonly worst: { readonly name: string; readonly cpk: CapabilityIndex } | undefined;
}

/** Fewer crimps of one combination give no Cpk that is worth its name. */
const LEAST_CRIMPS = 4;

/** Each crimp in its own tolerance where they differ, so that one pair of limits fits all. */
const scaled = ({ tolerancesDiffer }: MachineReadings, crimp: JudgedCrimp) =>
  tolerancesDiffer ? deviationOf(crimp) / crimp.tolerance.toNumber() : deviationOf(crimp);

const named = (indices: readonly CapabilityIndex[], name: CapabilityIndex['index']) =>
  indices.find(({ index }) => index === name)!;

function worstOf(combinations: readonly CombinationReadings[]): AllCapability['worst'] {
  return combinations.reduce<AllCapability['worst']>((worst, { name, counted }) => {
    if (counted.length < LEAST_CRIMPS) return worst;
    const found = capabilityOf(counted, counted[0]!.tolerance.toNumber());
    if (!('indices' in found)) return worst;
    const cpk = named(found.indices, 'Cpk');
    return worst && worst.cpk.value! <= cpk.value! ? worst : { name, cpk };
  }, undefined);
}

/** Capability over all combinations of a machine: only what is true of them together. */
export function capabilityOfAll(machine: MachineReadings): AllCapability | { readonly reason: string } {
  const groups = machine.combinations
    .map(({ counted }) => counted.map(crimp => scaled(machine, crimp)))
    .filter(({ length }) => length > 0);
  const found = indicesOf(groups, machine.tolerancesDiffer ? 1 : machine.tolerance.toNumber());
  if (!('indices' in found)) return found;
  const of = (name: CapabilityIndex['index']) => named(found.indices, name);
  const worst = groups.length > 1 ? worstOf(machine.combinations) : undefined;
  return { cp: of('Cp'), pp: of('Pp'), ppk: of('Ppk'), worst };
}

/** What each index looks at. */
export const CAPABILITY_WORDS: Readonly<Record<CapabilityIndex['index'], string>> = {
  Cp: 'scatter alone, as if the mean were right',
  Cpk: 'and where the mean lies',
  Cpm: 'around the target',
  Pp: 'all scatter',
  Ppk: 'and where the mean lies',
};
