import { useCallback, useEffect, useState } from 'react';

function read<T extends object>(key: string, fresh: T): T {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? '{}');
    return { ...fresh, ...(kept as Partial<T>) };
  } catch {
    return fresh;
  }
}

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
        localStorage.setItem(key, JSON.stringify({ ...read(key, {}), ...part }));
      } catch {
        // A host without storage forgets; nothing else changes.
      }
      for (const each of shownBy.get(key) ?? []) each(part);
    },
    [key],
  );
  return [value, change];
}
