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

const BUNDLES: readonly (readonly [id: BundleId, label: string, ids: readonly string[]])[] = [
  [
    'bench',
    'For the bench',
    ['cutLength', 'dieA', 'dieB', 'dialA', 'dialB', 'diameterA', 'diameterB', 'insertionA', 'insertionB', 'assembly'],
  ],
  ['price', 'For the price', ['pressure', 'mass', 'cost', 'price']],
  ['qa', 'For QA', ['check', 'deviation', 'nextDial']],
];

function byReason(offers: readonly Offer[]): Bundle['lacking'] {
  const groups = new Map<string, string[]>();
  for (const { reason, heading } of offers) {
    if (reason !== undefined) groups.set(reason, [...(groups.get(reason) ?? []), heading]);
  }
  return [...groups].map(([reason, headings]) => ({ reason, headings }));
}

/** The offers in groups: what the bench, the price and QA take. */
export function bundlesOf(offers: readonly Offer[]): readonly Bundle[] {
  return BUNDLES.map(([id, label, ids]) => {
    const own = ids.flatMap(each => offers.filter(offer => offer.id === each));
    return {
      id,
      label,
      offers: own.filter(({ reason }) => reason === undefined),
      present: own.filter(({ isPresent }) => isPresent).map(({ heading }) => heading),
      lacking: byReason(own.filter(({ isPresent }) => !isPresent)),
    };
  });
}
