import { goTo, shownAt, startOf, type Tab } from '../../../src/taskpane/app/places';

const view = (id: string) => ({ id, title: id, View: () => null });
const tabs: readonly Tab[] = [
  { id: 'parts', title: 'Parts', views: ['search', 'load'].map(view) },
  { id: 'quote', title: 'Quote', views: ['duty', 'columns', 'quote'].map(view) },
  { id: 'week', title: 'Week', views: ['columns', 'cards'].map(view) },
];
const after = (...places: string[]) => {
  const { tab, view: shown } = shownAt(
    tabs,
    places.reduce((from, to) => goTo(tabs, from, to), startOf(tabs)),
  );
  return `${tab.id}/${shown.id}`;
};

test.each([
  ['the first view of the first tab, at first', [], 'parts/search'],
  ['a tab and its view', ['quote/columns'], 'quote/columns'],
  ['a view of the name of its tab', ['quote/quote'], 'quote/quote'],
  ['a tab alone: its first view', ['week'], 'week/columns'],
  ['a tab alone: the view that was last shown of it', ['quote/columns', 'week/cards', 'quote'], 'quote/columns'],
  ['the same view under another tab leaves the tab before where it was', ['quote/duty', 'week/columns', 'quote'], 'quote/duty'],
  ['an unknown tab changes nothing', ['quote/duty', 'cuts/plan'], 'quote/duty'],
  ['an unknown view changes nothing, not even the tab', ['quote/duty', 'week/plan'], 'quote/duty'],
  ['no more than tab and view', ['quote/duty/2'], 'parts/search'],
  ['nothing', [''], 'parts/search'],
  ['a tab without its view', ['week/'], 'parts/search'],
])('%s', (_, places, shown) => expect(after(...(places as string[]))).toBe(shown));
