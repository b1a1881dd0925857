/** One kind of work in a hose shop, and where in the pane it begins. */
export interface Person {
  readonly id: string;
  readonly title: string;
  /** What somebody with this work wants, as a phrase. */
  readonly wants: string;
  /** Place of the pane that suits a sheet of theirs. */
  readonly place: string;
  /** What to have in front of one there. */
  readonly ownSheet: string;
}

/** Who works with the pane. */
export const people: readonly Person[] = [
  {
    id: 'estimator',
    title: 'Estimator',
    wants: 'hose and couplings for a duty, cut length, cost, price',
    place: 'quote/columns',
    ownSheet: 'your price sheet, one row per assembly',
  },
  {
    id: 'shop-office',
    title: 'Shop office',
    wants: 'the week’s cut lengths, cut list, bench cards',
    place: 'week/cut-list',
    ownSheet: 'your job sheet, one row per line to make',
  },
  {
    id: 'bench',
    title: 'Bench',
    wants: 'die, dial and insertion mark; readings; what to do next',
    place: 'bench/entry',
    ownSheet: 'the sheet with the pieces to crimp, one row per crimp',
  },
  {
    id: 'qa',
    title: 'QA',
    wants: 'pass or fail, what to change on the dial, records, recalls',
    place: 'qa/analysis',
    ownSheet: 'the sheet with the readings, one row per crimp',
  },
];

/** The person of that id; undefined where nobody, or somebody of another version, was remembered. */
export const personOf = (id: string): Person | undefined => people.find(person => person.id === id);
