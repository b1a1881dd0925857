import { partKey } from '../../core/catalogue/partName';

/** Whether the catalogue has a name; undefined where there is no catalogue to ask. */
export const namesKnown = (index: ReadonlyMap<string, unknown> | undefined) =>
  index && ((name: string) => index.has(partKey(name)));
