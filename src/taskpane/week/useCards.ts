import { useCallback, useRef, useState } from 'react';
import { gatherCards, type CardWishes, type GatheredCards } from '../../sheets/jobs/gatherCards';
import { jobChoice, type JobChoice } from '../../sheets/jobs/jobChoice';
import type { Workbook } from '../../workbook/workbook';
import { useSettledView } from '../controls/useSettledView';

/** What a view of cards shows once it was read. */
export type CardsRead = GatheredCards & { readonly status: 'ready' };

/** While wishes say the same, nothing is read anew. */
const keyOf = ({ step, take = new Set(), ...rest }: CardWishes) => JSON.stringify([step, [...take], rest]);

/**
 * Follows the selection and reads the lines that are meant as cards.
 */
export function useCards(workbook: Workbook, wishes: CardWishes) {
  const shown = useRef<{ readonly choice: JobChoice; readonly row: number }>();
  const last = useRef<JobChoice>();
  const [meant, setMeant] = useState(wishes);
  if (keyOf(meant) !== keyOf(wishes)) setMeant(wishes);
  const read = useCallback(
    async (from: Workbook): Promise<CardsRead> => {
      const selected = await jobChoice(from);
      const { sheet, block } = selected;
      const held = shown.current;
      // A row that the view itself led to is no other choice.
      const isHeld = held && held.choice.sheet === sheet && block.rows === 1 && block.row === held.row - 1;
      if (!isHeld) shown.current = undefined;
      const choice = isHeld ? held.choice : selected;
      last.current = choice;
      return { status: 'ready', ...(await gatherCards(from, meant, choice)) };
    },
    [meant],
  );
  const { view, refresh } = useSettledView<CardsRead>(workbook, read);
  return {
    view,
    refresh,
    /** Reads the lines that are meant once more: the sheet may have changed since. */
    gather: () => gatherCards(workbook, meant, last.current),
    /** Leads to a row of the sheet; the lines that are meant stay. */
    show: (row: number) => {
      if (view.status !== 'ready') return;
      const { choice } = view.jobs;
      shown.current = { choice, row };
      void workbook.select({ sheet: choice.sheet, address: `A${row}` });
    },
  };
}
