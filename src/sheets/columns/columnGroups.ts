import { RESULT_COLUMNS } from '../../workbook/spilledResult';
import { partOf, type Offer, type FormulaPlace } from './offer';

/** Columns side by side that one formula fills. */
export interface ColumnGroup {
  readonly offers: readonly Offer[];
  /** The formula of the group without `=`. */
  readonly formula: (place: FormulaPlace) => string;
}

/** Any place tells calls apart. */
const ANY: FormulaPlace = { index: 1, catalogue: 'Catalogue', at: role => role };

interface Source {
  readonly call: Offer['call'];
  readonly part: number;
}

/** From which call a column is taken: from one that gives another of the columns, too, where there is one. */
function sourceOf({ call, part, alsoFrom }: Offer, wanted: ReadonlySet<string>): Source | undefined {
  if (alsoFrom && wanted.has(alsoFrom.call(ANY))) return alsoFrom;
  return part === undefined ? undefined : { call, part };
}

const idOfCall = (call: string) => /^HOSE\.([A-Z0-9]+)\(/.exec(call)![1]!;

/** A whole result as it comes; else its wanted columns in the wanted order. */
function spilling(call: string, parts: readonly number[]): string {
  const isWhole = parts.length === RESULT_COLUMNS[idOfCall(call)] && parts.every((part, i) => part === i + 1);
  return isWhole ? call : `CHOOSECOLS(${call},${parts.join(',')})`;
}

const alone = (offer: Offer): ColumnGroup => ({
  offers: [offer],
  formula: place => (offer.part ? partOf(offer.call(place), place, offer.part) : offer.call(place)),
});

function together(members: readonly { readonly offer: Offer; readonly source: Source }[]): ColumnGroup {
  const [first] = members;
  if (members.length === 1) return alone(first!.offer);
  const parts = members.map(({ source }) => source.part);
  return { offers: members.map(({ offer }) => offer), formula: place => spilling(first!.source.call(place), parts) };
}

/** Every column by itself, in the order of the offers. */
export const singleColumns = (offers: readonly Offer[]): readonly ColumnGroup[] => offers.map(alone);

/** The columns that one call gives side by side, each group where its first column would stand. */
export function columnGroups(offers: readonly Offer[]): readonly ColumnGroup[] {
  const wanted = new Set(offers.flatMap(({ call, part }) => (part === undefined ? [] : [call(ANY)])));
  const groups = new Map<string, { offer: Offer; source: Source }[]>();
  for (const offer of offers) {
    const source = sourceOf(offer, wanted);
    const key = source ? source.call(ANY) : `alone ${offer.id}`;
    const members = groups.get(key) ?? [];
    members.push({ offer, source: source ?? { call: offer.call, part: 1 } });
    groups.set(key, members);
  }
  return [...groups.values()].map(together);
}
