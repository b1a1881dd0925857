import { capability, type CapabilityIndex } from '../../core/quality/capability';
import { TradeError } from '../../core/tradeError';
import { gatherBy, type JudgedCrimp } from './analyseReadings';

/** Capability of deviations, or why there is none. */
export type CapabilityOf = { readonly indices: readonly CapabilityIndex[] } | { readonly reason: string };

/**
 * Capability of crimps between − and + tolerance around their targets. Of several combinations each is a subgroup: Cp and Cpk tell what
 * the machine can do with every setting right, Pp and Ppk what comes out with the settings as they are.
 * @param tolerance in the unit of the crimps
 */
export function capabilityOf(crimps: readonly JudgedCrimp[], tolerance: number): CapabilityOf {
  const groups = gatherBy(crimps, ({ combination }) => combination).map(({ items }) =>
    items.map(({ measure }) => measure.deviation.toNumber()),
  );
  const subgroups = groups.length > 1 ? groups : groups.flat().map(value => [value]);
  try {
    return { indices: capability({ subgroups, lower: -tolerance, upper: tolerance, target: 0 }) };
  } catch (error) {
    if (error instanceof TradeError) return { reason: error.message };
    throw error;
  }
}

/** What each index looks at. */
export const CAPABILITY_WORDS: Readonly<Record<CapabilityIndex['index'], string>> = {
  Cp: 'scatter within combinations',
  Cpk: 'and where the mean lies',
  Cpm: 'around the target',
  Pp: 'all scatter',
  Ppk: 'and where the mean lies',
};
