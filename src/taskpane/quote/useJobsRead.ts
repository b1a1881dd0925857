import { useCallback, useState } from 'react';
import { freshSettings } from '../../sheets/cutlist/cutSettings';
import type { Jobs } from '../../sheets/jobs/readJobs';
import { quoteJobs, type QuoteLineWishes } from '../../sheets/jobs/quoteLine';
import { benchStep } from '../../sheets/table/benchStep';
import type { Takeable } from '../../sheets/table/tableRows';
import { measureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import { useSettledView, type UnreadView } from '../controls/useSettledView';
import { useStored } from '../controls/useStored';

/** The job lines that the selection means, read as they will be when something is made of them. */
export interface JobsRead {
  readonly view: { readonly status: 'ready'; readonly jobs: Jobs } | UnreadView;
  readonly wishes: QuoteLineWishes;
  readonly take: ReadonlySet<Takeable>;
  readonly onTake: (take: ReadonlySet<Takeable>) => void;
  readonly refresh: () => void;
}

/**
 * Follows the selection and reads its job lines.
 * @param turn what else is wished of them; the same function at every call
 */
export function useJobsRead(workbook: Workbook, turn: (wishes: QuoteLineWishes) => QuoteLineWishes): JobsRead {
  const [cuts] = useStored('cuts', freshSettings('mm'));
  const [take, onTake] = useState<ReadonlySet<Takeable>>(new Set());
  const { unit, step } = cuts;
  const wishes = { step: { value: benchStep({ unit, step }, unit), unit: measureUnit('length', unit)! }, take };
  const read = useCallback(
    async (of: Workbook) => {
      const said = { value: benchStep({ unit, step }, unit), unit: measureUnit('length', unit)! };
      return { status: 'ready' as const, jobs: await quoteJobs(of, turn({ step: said, take })) };
    },
    [unit, step, take, turn],
  );
  const { view, refresh } = useSettledView(workbook, read);
  return { view, wishes, take, onTake, refresh };
}
