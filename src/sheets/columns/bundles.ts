import type { Offer } from './offer';

/** Who columns are added for in one press. */
export type BundleId = 'bench' | 'price' | 'qa';

/** Columns that belong together, and what keeps some of them from being added. */
export interface Bundle {
  readonly id: BundleId;
  readonly label: string;
  /** Those that can be added now, in the order in which they are written. */
  readonly offers: readonly Offer[];
  /** Headings of the table's own columns that already are what the bundle would add. */
  readonly present: readonly string[];
  /** What cannot be added, by its reason. */
  readonly lacking: readonly { readonly reason: string; readonly headings: readonly string[] }[];
}

const ofEnd = (end: 'A' | 'B') => ['die', 'dial', 'diameter', 'insertion'].map(id => `${id}${end}`);

/** Of an end, or of a row that is one crimp. */
const ofCrimps = (end: '' | 'A' | 'B') => ['check', 'deviation', 'nextDial'].map(id => `${id}${end}`);

const BUNDLES: readonly (readonly [id: BundleId, label: string, ids: readonly string[]])[] = [
  [
    'bench',
    'For the bench',
    // What one call gives stands together: the assembly, end A, end B.
    ['cutLength', 'assembly', ...ofEnd('A'), ...ofEnd('B')],
  ],
  ['price', 'For the price', ['pressure', 'mass', 'cost', 'price']],
  ['qa', 'For QA', [...ofCrimps(''), ...ofCrimps('A'), ...ofCrimps('B')]],
];

function byReason(offers: readonly Offer[]): Bundle['lacking'] {
  const groups = new Map<string, string[]>();
  for (const { reason, heading } of offers) {
    if (reason !== undefined) groups.set(reason, [...(groups.get(reason) ?? []), heading]);
  }
  return [...groups].map(([reason, headings]) => ({ reason, headings }));
}

/** The offers of a bundle, each behind the columns that it is worked out from: looked up once, they serve several, and can be seen. */
function withTheirBasis(ids: readonly string[], offers: readonly Offer[]): Offer[] {
  const named = (id: string) => offers.filter(offer => offer.id === id);
  const main = ids.flatMap(named);
  const basis = main.flatMap(({ restsOn, reason }) => (reason === undefined ? (restsOn ?? []) : []));
  const canBeAdded = basis.flatMap(named).filter(({ reason }) => reason === undefined);
  const order = (offer: Offer) => offers.indexOf(offer);
  const first = [...new Set(canBeAdded)].filter(offer => !main.includes(offer)).sort((a, b) => order(a) - order(b));
  return [...first, ...main];
}

/** The offers in groups: what the bench, the price and QA take. */
export function bundlesOf(offers: readonly Offer[]): readonly Bundle[] {
  return BUNDLES.map(([id, label, ids]) => {
    const own = withTheirBasis(ids, offers);
    return {
      id,
      label,
      offers: own.filter(({ reason }) => reason === undefined),
      present: own.filter(({ isPresent }) => isPresent).map(({ heading }) => heading),
      lacking: byReason(own.filter(({ isPresent }) => !isPresent)),
    };
  });
}
