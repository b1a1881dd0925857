import { Body1, Button } from '@fluentui/react-components';
import { useState } from 'react';
import { offcutsOf } from '../../sheets/cutlist/offcuts';
import type { HosePlan } from '../../sheets/cutlist/planHose';
import { today } from '../../sheets/table/today';
import { labelSheets } from '../../sheets/tags/labelSheets';
import { offcutPage } from '../../sheets/tags/offcutPage';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { printDocument } from '../controls/printDocument';
import { useStored } from '../controls/useStored';
import { FRESH_TAGS } from './tagFields';

interface Props {
  readonly plans: readonly HosePlan[];
  readonly unit: LengthUnit;
}

/** Labels for the ends that go back into the rack, on the label sheets that are chosen for the tags. */
export function OffcutLabels({ plans, unit }: Props) {
  const [tags] = useStored('tags', FRESH_TAGS);
  const [told, setTold] = useState('');
  const reels = plans.flatMap(plan => plan.reels);
  const offcuts = offcutsOf(reels, unit, today());
  if (offcuts.length === 0) return null;
  const sheet = labelSheets.find(({ id }) => id === tags.labels) ?? labelSheets[0];
  const print = async () => {
    const isPrinted = await printDocument(offcutPage(offcuts, sheet));
    setTold(isPrinted ? '' : 'This host has no print window: the ends stand on the sheet of the rack afterwards.');
  };
  return (
    <>
      <Button onClick={() => void print()}>
        Print {offcuts.length} offcut {offcuts.length === 1 ? 'label' : 'labels'}
      </Button>
      <div role="status">{told && <Body1>{told}</Body1>}</div>
    </>
  );
}
