import type { Catalogue } from './catalogue';
import { partKey } from './partName';

/** A part that a new catalogue no longer has, though somebody's rows name it. */
export interface RemovedPart {
  readonly table: 'hoses' | 'fittings' | 'guards';
  /** As it stands in the old catalogue. */
  readonly name: string;
  /** How many of the names in use are this part's. */
  readonly uses: number;
}

/**
 * Parts in use that a new catalogue removes or leaves out.
 * @param namesInUse every name of a hose, coupling, ferrule or guard that the workbook's rows hold, as often as it stands there
 * @returns in the order of the old catalogue; a ferrule is in use where a crimp row of the new catalogue names it, too
 */
export function removedParts(before: Catalogue, after: Catalogue, namesInUse: Iterable<string>): readonly RemovedPart[] {
  const uses = new Map<string, number>();
  const ferrules = after.crimps.flatMap(({ ferrule }) => ferrule ?? []);
  for (const name of [...namesInUse, ...ferrules]) uses.set(partKey(name), (uses.get(partKey(name)) ?? 0) + 1);
  const removed = (table: RemovedPart['table'], names: readonly string[], isThere: (key: string) => boolean) =>
    names.flatMap(name => {
      const count = uses.get(partKey(name));
      return count === undefined || isThere(partKey(name)) ? [] : [{ table, name, uses: count }];
    });
  const { hoses, fittings, guards } = after.index;
  const guardNames = [...new Map(before.guards.map(({ guard }) => [partKey(guard), guard])).values()];
  return [
    ...removed(
      'hoses',
      before.hoses.map(({ hose }) => hose),
      key => !!hoses.get(key)?.row,
    ),
    ...removed(
      'fittings',
      before.fittings.map(({ fitting }) => fitting),
      key => !!fittings.get(key)?.row,
    ),
    ...removed('guards', guardNames, key => !!guards.get(key)?.some(({ entry }) => entry.row)),
  ];
}
