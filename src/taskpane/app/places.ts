import type { View } from '../controls/viewProps';

/** One tab of the pane: the views for one kind of work. */
export interface Tab {
  readonly id: string;
  readonly title: string;
  readonly views: readonly View[];
}

/** Where in the pane somebody is: the tab, and the view that was last shown of each tab. */
export interface Places {
  readonly tab: string;
  /** Id of a view, by the id of its tab; the first view where a tab has not been shown. */
  readonly views: Readonly<Record<string, string>>;
}

/** The first view of the first tab. */
export const startOf = (tabs: readonly Tab[]): Places => ({ tab: tabs[0]!.id, views: {} });

/** The tab that is shown, and its view. */
export function shownAt(tabs: readonly Tab[], { tab, views }: Places): { readonly tab: Tab; readonly view: View } {
  const shown = tabs.find(({ id }) => id === tab)!;
  return { tab: shown, view: shown.views.find(({ id }) => id === views[tab]) ?? shown.views[0]! };
}

/**
 * Goes to a place.
 * @param place `quote/duty`: a tab and one of its views; `quote`: the tab, with the view that was last shown of it
 * @returns where one is then; the same as before where there is no such place
 */
export function goTo(tabs: readonly Tab[], places: Places, place: string): Places {
  const [tab, view, ...more] = place.split('/');
  const wanted = tabs.find(({ id }) => id === tab);
  if (!wanted || more.length > 0) return places;
  if (view === undefined) return { ...places, tab: wanted.id };
  if (!wanted.views.some(({ id }) => id === view)) return places;
  return { tab: wanted.id, views: { ...places.views, [wanted.id]: view } };
}
