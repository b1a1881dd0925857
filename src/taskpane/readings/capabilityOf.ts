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

/** An index with its interval: `1.12 (0.80 to 1.43)`. */
export function indexText({ value, low, high }: CapabilityIndex): string {
  if (value === undefined) return 'not known';
  if (low === undefined || high === undefined) return value.toFixed(2);
  return `${value.toFixed(2)} (${low.toFixed(2)} to ${high.toFixed(2)})`;
}
