import type { Catalogue, FluidEntry } from './catalogue';
import { fluidKey, listsFluid } from './fluidName';
import { partKey } from './partName';
import { remembered } from './remembered';
import type { Hose } from './tables/hosesTable';

/** A fluid as the table Fluids knows it. */
interface KnownFluid {
  /** Keys of all its names. */
  readonly names: readonly string[];
  readonly rows: readonly FluidEntry[];
}

const fluids = remembered<KnownFluid>();

/** A fluid by its name or by what it is also called, without case; one that the table does not have goes by its own name only. */
function knownFluid(catalogue: Catalogue, fluid: string): KnownFluid {
  const key = fluidKey(fluid);
  return fluids(catalogue, key, () => {
    const own = new Set(catalogue.index.fluids.filter(({ names }) => names.includes(key)).map(({ names }) => names[0]));
    const rows = catalogue.index.fluids.filter(({ names }) => own.has(names[0]));
    return { names: [...new Set([key, ...rows.flatMap(({ names }) => names)])], rows };
  });
}

/** Every name of a fluid as a key (see fluidKey): the given one, its own, and what it is also called. */
const namesOfFluid = (catalogue: Catalogue, fluid: string): readonly string[] => knownFluid(catalogue, fluid).names;

/** Whether a hose is for a fluid, by any of its names; undefined where the hose's Fluids are blank. */
export function takesFluid(catalogue: Catalogue, { fluids: listed }: Hose, fluid: string): boolean | undefined {
  return listed === undefined ? undefined : listsFluid(listed, namesOfFluid(catalogue, fluid));
}

/** How closely a row names a hose: an exact name closest, then the longer pattern; undefined where it does not. */
function closeness({ hose }: FluidEntry, key: string): number | undefined {
  if (hose === key) return Infinity;
  if (hose === '') return 0;
  return hose.endsWith('*') && key.startsWith(hose.slice(0, -1)) ? hose.length : undefined;
}

/** The rows of Fluids that count for a hose with a fluid: an exact hose wins over a pattern, the longer pattern, a pattern over a blank. */
export function fluidRowsFor(catalogue: Catalogue, { hose }: Hose, fluid: string): readonly FluidEntry[] {
  const key = partKey(hose);
  const ranked = knownFluid(catalogue, fluid).rows.flatMap(row => {
    const close = closeness(row, key);
    return close === undefined ? [] : [{ row, close }];
  });
  const closest = Math.max(...ranked.map(({ close }) => close));
  return ranked.filter(({ close }) => close === closest).map(({ row }) => row);
}
