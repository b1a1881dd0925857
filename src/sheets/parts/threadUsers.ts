import type { Catalogue } from '../../core/catalogue/catalogue';
import { isEndForm } from '../../core/catalogue/endFormWords';
import type { Fitting } from '../../core/catalogue/tables/fittingsTable';
import { threadKey } from '../../core/threads/threadKey';
import type { PossibleThread } from '../../core/threads/findThread';

/** What of the catalogue uses a thread. */
export interface ThreadUsers {
  /** End forms with series and size: `24° cone L DN 19`. */
  readonly endForms: readonly string[];
  readonly fittings: readonly string[];
}

/** `24° cone S, heavy DN 16` → end form `24° cone`, series S, size 16. */
const USE = /^(.*?)(?:\s([LS]), \w+)?\sDN (\d+)$/;
const nominal = (size: string | undefined) => /^dn\s*(\d+)$/i.exec(size?.trim() ?? '')?.[1];

/** Whether an end form of that size usually has the thread: asked only of fittings whose thread the catalogue does not state. */
function isUsual({ usedWith }: PossibleThread, { endForm, series, size }: Fitting): boolean {
  return usedWith.split('; ').some(use => {
    const [, form, wanted, dn] = USE.exec(use) ?? [];
    if (form === undefined || dn !== nominal(size)) return false;
    return isEndForm(endForm, series, form) && (wanted === undefined || series?.trim().toUpperCase() === wanted);
  });
}

const endFormOf = ({ endForm, series, size }: Fitting) => [endForm, series, size].filter(Boolean).join(' ');

/** The fittings of a catalogue that have a thread: as their Thread says, else as their end form and size usually do. */
export function threadUsers({ fittings }: Pick<Catalogue, 'fittings'>, thread: PossibleThread): ThreadUsers {
  const key = threadKey(thread.thread);
  const users = fittings.filter(row => (row.thread === undefined ? isUsual(thread, row) : threadKey(row.thread) === key));
  return { endForms: [...new Set(users.map(endFormOf))], fittings: users.map(({ fitting }) => fitting) };
}
