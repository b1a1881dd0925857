import { Body1, Button } from '@fluentui/react-components';
import { useState } from 'react';
import { offcutsOf } from '../../sheets/cutlist/offcuts';
import type { HosePlan } from '../../sheets/cutlist/planHose';
import { today } from '../../sheets/table/today';
import { labelSheets } from '../../sheets/tags/labelSheets';
import { offcutPage } from '../../sheets/tags/offcutPage';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { HostServices } from '../controls/viewProps';
import { useStored } from '../controls/useStored';
import { FRESH_TAGS } from './tagFields';

interface Props {
  readonly services: HostServices;
  readonly plans: readonly HosePlan[];
  readonly unit: LengthUnit;
}

const NOT_PRINTED =
  'No labels were printed: no print window opens here. The ends stand, with their lengths and lots, on the sheet of the rack afterwards.';

/** Labels for the ends that go back into the rack, on the label sheets that are chosen for the tags. */
export function OffcutLabels({ services, plans, unit }: Props) {
  const [tags] = useStored('tags', FRESH_TAGS);
  const [message, setTold] = useState('');
  const reels = plans.flatMap(plan => plan.reels);
  const offcuts = offcutsOf(reels, unit, today());
  if (offcuts.length === 0) return null;
  if (!services.canPrint()) return <Body1>{NOT_PRINTED}</Body1>;
  const sheet = labelSheets.find(({ id }) => id === tags.labels) ?? labelSheets[0];
  const print = async () => {
    const isPrinted = await services.print(offcutPage(offcuts, sheet));
    setTold(isPrinted ? '' : NOT_PRINTED);
  };
  return (
    <>
      <Button onClick={() => void print()}>
        Print {offcuts.length} offcut {offcuts.length === 1 ? 'label' : 'labels'}
      </Button>
      <div role="status">{message && <Body1>{message}</Body1>}</div>
    </>
  );
}
