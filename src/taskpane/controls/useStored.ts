import { useCallback, useEffect, useState } from 'react';
import * as v from 'valibot';

const KINDS: Readonly<Record<string, v.GenericSchema>> = { string: v.string(), boolean: v.boolean(), number: v.number() };
const Kept = v.record(v.string(), v.unknown());

/** What the storage holds under a key, which anything may have written to; nothing where that is no object. */
function kept(key: string): Readonly<Record<string, unknown>> {
  try {
    const read = v.safeParse(Kept, JSON.parse(localStorage.getItem(key) ?? '{}'));
    return read.success ? read.output : {};
  } catch {
    return {};
  }
}

/** A kept value of the fresh one's type; what is no text, number or yes and no is checked by whom it belongs to. */
function ofType(fresh: unknown, value: unknown): unknown {
  const kind = KINDS[typeof fresh] ?? (Array.isArray(fresh) ? v.array(v.unknown()) : v.unknown());
  return value !== undefined && v.is(kind, value) ? value : fresh;
}

function read<T extends object>(key: string, fresh: T): T {
  const stored = kept(key);
  const fields = Object.entries(fresh).map(([name, value]) => [name, ofType(value, stored[name])]);
  return Object.fromEntries(fields) as T;
}

/** Whether anything is kept under a name: somebody has filled in one of its fields. */
export const hasStored = (name: string): boolean => Object.keys(kept(`benchrow.${name}`)).length > 0;

/** Who shows the same fields at this moment: views that are hidden stay, and must not bring back what they knew. */
const shownBy = new Map<string, Set<(part: object) => void>>();

function useChanges(key: string, take: (part: object) => void): void {
  useEffect(() => {
    const takers = shownBy.get(key) ?? new Set();
    shownBy.set(key, takers.add(take));
    return () => void takers.delete(take);
  }, [key, take]);
}

/** Fields that are kept on this computer from one visit to the next, where the host allows it; the same in all views that show them. */
export function useStored<T extends object>(name: string, fresh: T): [T, (change: Partial<T>) => void] {
  const key = `benchrow.${name}`;
  const [value, setValue] = useState(() => read(key, fresh));
  const take = useCallback((part: object) => setValue(before => ({ ...before, ...part })), []);
  useChanges(key, take);
  const change = useCallback(
    (part: Partial<T>) => {
      try {
        localStorage.setItem(key, JSON.stringify({ ...kept(key), ...part }));
      } catch {
        // A host without storage forgets; nothing else changes.
      }
      for (const each of shownBy.get(key) ?? []) each(part);
    },
    [key],
  );
  return [value, change];
}
