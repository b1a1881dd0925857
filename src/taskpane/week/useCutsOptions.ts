import { numberFromText } from '../../core/units/numberText';
import type { CutsWritingOptions } from '../../sheets/cutlist/cutsWriting';
import { usableUntil } from '../../sheets/cutlist/usableUntil';
import type { Gathered } from '../../sheets/cutlist/gatherCuts';
import { thisMoment } from '../../sheets/table/today';
import { orderOfJobs } from '../../sheets/week/orderOfJobs';
import { useStored } from '../controls/useStored';
import { FRESH_CARDS } from './cardFields';
import { FRESH_ORDER, machineNow } from './orderFields';
import { FRESH_TAGS } from './tagFields';

/** What the fields of the week's other views say of the pieces: order of work, proof factor, numbers. */
export function useCutsOptions(): (gathered: Gathered) => CutsWritingOptions {
  const [order] = useStored('order', FRESH_ORDER);
  const [cards] = useStored('cards', FRESH_CARDS);
  const [tags] = useStored('tags', FRESH_TAGS);
  return ({ read, settings }) => {
    const now = thisMoment();
    const factor = numberFromText(cards.factor)?.value;
    return {
      machine: order.machine || cards.machine,
      proofFactor: factor?.gte(1) ? factor : undefined,
      useBy: usableUntil(now.slice(0, 10), settings.useMonths),
      pressureUnit: read.catalogue?.units.pressure.symbol ?? cards.pressureUnit,
      prefix: tags.prefix,
      order: orderOfJobs(read, machineNow(order), settings.unit).rows,
      now,
    };
  };
}
