import type { CatalogueIndex } from './catalogue';
import { partKey } from './partName';

/** Whether the tables hold a part, or any part that begins like a pattern; rows that were left out count. */
export interface PartPresence {
  hose(name: string): boolean;
  fitting(name: string): boolean;
}

function presence(keys: Iterable<string>): (name: string) => boolean {
  const known = new Set(keys);
  let sorted: string[] | undefined;
  return name => {
    const key = partKey(name);
    if (!key.endsWith('*')) return known.has(key);
    sorted ??= [...known].sort();
    const start = key.slice(0, -1);
    let [low, high] = [0, sorted.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sorted[middle]! < start) low = middle + 1;
      else high = middle;
    }
    return sorted[low]?.startsWith(start) ?? false;
  };
}

/** Ways to ask for the parts of a catalogue by name or pattern. */
export function partPresence({ hoses, fittings }: CatalogueIndex): PartPresence {
  return { hose: presence(hoses.keys()), fitting: presence(fittings.keys()) };
}
