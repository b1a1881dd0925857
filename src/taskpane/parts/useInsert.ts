import { useCallback, useState } from 'react';
import type { Change, Expected, Workbook } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import { insertion, selectedPair, type PartCell } from '../../sheets/parts/insertPart';
import type { Part } from '../../sheets/parts/partSearch';
import { errorSentence } from '../../workbook/errorSentence';

/** How an insertion went, or what it waits for. */
export type InsertState =
  | { readonly status: 'idle' | 'busy' }
  /** Filled cells would be written over: the user says. */
  | { readonly status: 'asking'; readonly over: readonly string[]; readonly changes: readonly Change[]; readonly message: string }
  | { readonly status: 'done' | 'failed'; readonly text: string };

/** Inserts parts into the selected cell; never over data without having said so. */
export function useInsert(workbook: Workbook, standing: WorkbookCatalogue) {
  const [state, setState] = useState<InsertState>({ status: 'idle' });
  const run = useCallback(async (work: () => Promise<InsertState>) => {
    setState({ status: 'busy' });
    setState(
      await work().catch((error: unknown): InsertState => ({
        status: 'failed',
        text: errorSentence(error),
      })),
    );
  }, []);
  const write = async (changes: readonly Change[], message: string, expected?: Expected): Promise<InsertState> => {
    if (changes.length > 0) await workbook.write(changes, expected);
    return { status: 'done', text: message };
  };
  return {
    state,
    insert: (part: Part, wanted: PartCell) =>
      run(async () => {
        const { changes, over, message } = insertion(part, wanted, await selectedPair(workbook), standing);
        return over.length > 0 ? { status: 'asking', over, changes, message } : write(changes, message, 'blank');
      }),
    agree: () => (state.status === 'asking' ? run(() => write(state.changes, state.message)) : Promise.resolve()),
    leave: () => setState({ status: 'idle' }),
  };
}
