import { useCallback, useState } from 'react';
import { freshSettings } from '../../sheets/cutlist/cutSettings';
import { quoteJobs, type QuoteLineWishes } from '../../sheets/jobs/quoteLine';
import { benchStep } from '../../sheets/table/benchStep';
import { measureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import type { JobsView, JobTicks } from '../controls/JobsNote';
import { useSettledView } from '../controls/useSettledView';
import { useStored } from '../controls/useStored';

/** The job lines that the selection means, read as they will be when something is made of them. */
export interface JobsRead {
  readonly view: JobsView;
  readonly wishes: QuoteLineWishes;
  readonly ticks: JobTicks;
  readonly onTicks: (ticks: JobTicks) => void;
  readonly onAnswered: () => void;
}

/**
 * Follows the selection and reads its job lines.
 * @param turn what else is wished of them; the same function at every call
 */
export function useJobsRead(workbook: Workbook, turn: (wishes: QuoteLineWishes) => QuoteLineWishes): JobsRead {
  const [cuts] = useStored('cuts', freshSettings('mm'));
  const [ticks, onTicks] = useState<JobTicks>({});
  const { unit, step } = cuts;
  const wishes = { step: { value: benchStep({ unit, step }, unit), unit: measureUnit('length', unit)! }, ...ticks };
  const read = useCallback(
    async (of: Workbook) => {
      const said = { value: benchStep({ unit, step }, unit), unit: measureUnit('length', unit)! };
      return { status: 'ready' as const, jobs: await quoteJobs(of, turn({ step: said, ...ticks })) };
    },
    [unit, step, ticks, turn],
  );
  const { view, refresh } = useSettledView(workbook, read);
  return { view, wishes, ticks, onTicks, onAnswered: refresh };
}
