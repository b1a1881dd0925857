import { tabs } from '../../../src/taskpane/app/tabs';

test('the places of the pane, which tours, links and other people name, and their words', () => {
  expect(tabs.map(({ id, title, views }) => [id, title, views.map(view => view.id)])).toEqual([
    ['parts', 'Parts', ['search', 'identify', 'load', 'checks', 'dials']],
    ['quote', 'Quote', ['duty', 'columns', 'quote', 'to-buy', 'what-if']],
    ['week', 'Week', ['columns', 'order', 'cut-list', 'cards', 'tags']],
    ['bench', 'Bench', ['entry', 'machine']],
    ['qa', 'QA', ['analysis', 'records', 'recall', 'gauges']],
  ]);
  const asPlace = (title: string) => title.toLowerCase().replace(' ', '-');
  for (const { id, title, views } of tabs) {
    expect([id, ...views.map(view => view.id)]).toEqual([title, ...views.map(view => view.title)].map(asPlace));
  }
});

test('one id is one view: what two tabs show is kept once', () => {
  const known = new Map<string, unknown>();
  for (const view of tabs.flatMap(({ views }) => views)) {
    expect(known.get(view.id) ?? view).toBe(view);
    known.set(view.id, view);
  }
});
