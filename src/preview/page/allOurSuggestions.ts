import type { Univer } from '@univerjs/core';
import { IDescriptionService } from '@univerjs/preset-sheets-core';
import { NAMESPACE } from '../host/hostFunctions';

/**
 * Lets the formula editor offer every function of ours while `=HOSE.` is typed, in alphabetical order.
 * (The library cuts its list of suggestions after ten with `slice`, which would hide most of them.)
 */
export function allOurSuggestions(univer: Univer): void {
  const service = univer.__getInjector().get(IDescriptionService);
  const search = service.getSearchListByNameFirstLetter.bind(service);
  service.getSearchListByNameFirstLetter = text => {
    const found = search(text);
    if (!text.toUpperCase().startsWith(`${NAMESPACE}.`)) return found;
    const all = [...found].sort((a, b) => a.name.localeCompare(b.name));
    return Object.assign([...all], { slice: () => all });
  };
}
