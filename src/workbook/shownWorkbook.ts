import type { Workbook } from './workbook';

/** A workbook for as long as a view is shown. */
export interface ShownWorkbook {
  readonly workbook: Workbook;
  /** The view is hidden: the host is no longer listened to. Everything else goes on, for a plan in the making or a writing. */
  hide(): void;
}

/** The host behind a workbook of a view. */
const hosts = new WeakMap<Workbook, Workbook>();

/** The workbook itself, whichever view it was given to: what is remembered of a workbook is kept under this. */
export function hostOf(workbook: Workbook): Workbook {
  return hosts.get(workbook) ?? workbook;
}

/** The same workbook, whose events can be ended for all who listen through it. Whatever it is asked, the host itself does. */
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
  const workbook: Workbook = {
    host: host.host,
    onSelection,
    sheets: () => host.sheets(),
    selection: () => host.selection(),
    read: ranges => host.read(ranges),
    used: sheet => host.used(sheet),
    tables: sheet => host.tables(sheet),
    layout: sheet => host.layout(sheet),
    spillParent: cell => host.spillParent(cell),
    names: () => host.names(),
    write: (changes, expected) => host.write(changes, expected),
    recall: key => host.recall(key),
    remember: (key, text) => host.remember(key, text),
    select: at => host.select(at),
    reenterUnknownNames: () => host.reenterUnknownNames(),
  };
  hosts.set(workbook, hostOf(host));
  const hide = () => {
    isHidden = true;
    for (const stop of stops) stop();
  };
  return { workbook, hide };
}
