import { useCallback, useState } from 'react';

function read<T extends object>(key: string, fresh: T): T {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? '{}');
    return { ...fresh, ...(kept as Partial<T>) };
  } catch {
    return fresh;
  }
}

/** Fields that are kept on this computer from one visit to the next, where the host allows it. */
export function useStored<T extends object>(name: string, fresh: T): [T, (change: Partial<T>) => void] {
  const key = `benchrow.${name}`;
  const [value, setValue] = useState(() => read(key, fresh));
  const change = useCallback(
    (part: Partial<T>) =>
      setValue(before => {
        const after = { ...before, ...part };
        try {
          localStorage.setItem(key, JSON.stringify(after));
        } catch {
          // A host without storage forgets; nothing else changes.
        }
        return after;
      }),
    [key],
  );
  return [value, change];
}
