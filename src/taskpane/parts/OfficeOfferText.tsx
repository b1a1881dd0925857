import { MessageBarTitle } from '@fluentui/react-components';
import type { ComparedOffer } from '../../sheets/parts/officeOffer';
import type { OfficeView } from './useOfficeOffer';

const TITLES: Record<ComparedOffer['kind'], string> = {
  first: 'No parts data yet. The office’s catalogue:',
  newer: 'The office has a newer catalogue:',
  differs: 'The office’s catalogue differs:',
  same: '',
};

/** The offer, where there is something to take. */
export const openOffer = (offer: OfficeView['offer']): ComparedOffer | undefined =>
  offer && 'result' in offer && offer.kind !== 'same' ? offer : undefined;

/** What the office's catalogue would change, in a sentence or two. */
export function OfficeOfferText({ offer }: { readonly offer: ComparedOffer }) {
  const { kind, summary, spared, result, isTaken } = offer;
  const isUnread = kind !== 'first' && !result.changes;
  return (
    <>
      <MessageBarTitle>
        {isUnread ? 'The parts data of this workbook cannot be read. The office’s catalogue:' : TITLES[kind]}
      </MessageBarTitle>
      {summary}.{isTaken && ' It was taken before: these rows have been changed here since.'}
      {spared.size > 0 && ' Machines stays as it is: the office’s table lacks dials that are recorded here.'}
    </>
  );
}
