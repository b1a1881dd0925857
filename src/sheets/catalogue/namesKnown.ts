import type { Catalogue } from '../../core/catalogue/catalogue';
import { partKey } from '../../core/catalogue/partName';

/** Whether the catalogue has a name; undefined where there is no catalogue to ask. */
export const namesKnown = (index: ReadonlyMap<string, unknown> | undefined) =>
  index && ((name: string) => index.has(partKey(name)));

/** The names by which a table's columns of hoses, fittings and machines are known, whatever their headings. */
export const partsKnown = (index: Catalogue['index'] | undefined) => ({
  isHose: namesKnown(index?.hoses),
  isFitting: namesKnown(index?.fittings),
  isMachine: namesKnown(index?.machines),
});
