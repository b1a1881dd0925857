import type { Workbook } from '../../workbook/workbook';

/** A workbook's port that can be given away before the workbook is open. */
export interface ComingWorkbook {
  readonly port: Workbook;
  /** Says that it is open; everything that was asked meanwhile is answered then. */
  arrive(workbook: Workbook): void;
}

/** Methods that answer with a promise. */
type Asked = Exclude<keyof Workbook, 'host' | 'onSelection'>;

/** A port whose answers wait for the workbook, so that the pane can be used while the spreadsheet is still loading. */
export function comingWorkbook(): ComingWorkbook {
  let arrive!: (workbook: Workbook) => void;
  const arrived = new Promise<Workbook>(done => (arrive = done));
  const asked = <Key extends Asked>(key: Key) =>
    (async (...given: unknown[]) => {
      const workbook = await arrived;
      return (workbook[key] as (...given: unknown[]) => unknown).apply(workbook, given);
    }) as unknown as Workbook[Key];
  const onSelection: Workbook['onSelection'] = listener => {
    let stop: (() => void) | undefined;
    let isStopped = false;
    void arrived.then(workbook => {
      if (isStopped) return;
      stop = workbook.onSelection(listener);
      listener();
    });
    return () => {
      isStopped = true;
      stop?.();
    };
  };
  const keys: readonly Asked[] = [
    ...(['sheets', 'selection', 'read', 'used', 'tables', 'layout', 'spillParent', 'names'] as const),
    ...(['write', 'recall', 'remember', 'select', 'reenterUnknownNames'] as const),
  ];
  const methods = Object.fromEntries(keys.map(key => [key, asked(key)])) as unknown as Pick<Workbook, Asked>;
  return { port: { host: 'try-out', onSelection, ...methods }, arrive };
}
