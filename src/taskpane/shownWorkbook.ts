import type { Workbook } from '../host/workbook';

/** A workbook for as long as a view is shown. */
export interface ShownWorkbook {
  readonly workbook: Workbook;
  /** The view is hidden: the host is no longer listened to. Everything else goes on, for a plan in the making or a writing. */
  hide(): void;
}

/** The same workbook, whose events can be ended for all who listen through it. */
export function shownWorkbook(host: Workbook): ShownWorkbook {
  const stops = new Set<() => void>();
  let isHidden = false;
  const onSelection = (listener: () => void): (() => void) => {
    if (isHidden) return () => {};
    const end = host.onSelection(listener);
    const stop = () => {
      if (stops.delete(stop)) end();
    };
    stops.add(stop);
    return stop;
  };
  const workbook = Object.create(host, { onSelection: { value: onSelection } }) as Workbook;
  const hide = () => {
    isHidden = true;
    for (const stop of stops) stop();
  };
  return { workbook, hide };
}
