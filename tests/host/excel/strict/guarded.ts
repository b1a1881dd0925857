import type { Loaded } from './batch';
import { answerLimit, refused } from './refusals';

/** An object whose properties throw until they were loaded and the context synced. */
export function guarded<T extends object>(
  pending: Loaded[],
  read: () => Record<string, unknown> | undefined,
  methods: T,
): T & { isNullObject: boolean; load(names: string): void } {
  const wanted = new Set<string>();
  let known: Record<string, unknown> | undefined;
  let synced = false;
  const load = (names: string) => {
    // Too many cells with all that is asked of them do not fit into one answer of Excel on the web.
    if (names.includes('numberFormat') && (methods as { __cells?: () => number }).__cells) {
      pending.push({
        __load: () => {
          if ((methods as unknown as { __cells: () => number }).__cells() <= answerLimit.cells || answerLimit.code === 'null')
            return;
          throw refused('too large', answerLimit.code);
        },
      });
    }
    for (const name of names.split(',')) wanted.add(name.trim().split('/')[0]!);
    pending.push({
      __load: () => {
        // As it is at the sync: what others change later is not seen.
        const all = read();
        const asked = [...wanted].filter(name => all && name in all);
        known = all && Object.fromEntries(asked.map(name => [name, all[name]]));
        synced = true;
      },
    });
  };
  return new Proxy(methods as T & { isNullObject: boolean; load(names: string): void }, {
    get(target, property) {
      if (typeof property === 'symbol' || property === 'then') return undefined;
      if (property === 'load') return load;
      if (property in target) return (target as Record<string, unknown>)[property];
      if (property === 'isNullObject') {
        if (!synced) throw new Error('isNullObject read before sync');
        return known === undefined;
      }
      if (!synced || !wanted.has(property)) throw new Error(`${property} read before load and sync`);
      if (known === undefined) throw new Error(`${property} of a null object`);
      if (!(property in known)) throw new Error(`${property} is not of this object`);
      return known[property];
    },
    set(target, property, value) {
      (target as Record<string | symbol, unknown>)[property] = value;
      return true;
    },
  });
}
