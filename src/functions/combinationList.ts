import { partKey } from '../core/catalogue/partName';
import type { CellReader, FilledCell } from '../cells/readers';

/** A name out of a cell: compared without case, outer and repeated blanks, shown as it came. */
export interface Name {
  readonly key: string;
  readonly shown: FilledCell;
}

/** Reads a name; a number is a name too and stays a number in the result. */
export const readName: CellReader<Name> = cell => {
  const text = String(cell).trim();
  return { key: partKey(text.replace(/\s+/g, ' ')), shown: typeof cell === 'string' ? text : cell };
};

/** Rows gathered by name, in order of first appearance; each group is shown as its name first came. */
export function gatherByName<T>(rows: readonly (readonly [Name, T])[]): { name: FilledCell; items: T[] }[] {
  const groups = new Map<string, { name: FilledCell; items: T[] }>();
  for (const [{ key, shown }, item] of rows) {
    const group = groups.get(key);
    if (group) group.items.push(item);
    else groups.set(key, { name: shown, items: [item] });
  }
  return [...groups.values()];
}
