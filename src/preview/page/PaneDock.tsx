import { lazy, Suspense, useState, useSyncExternalStore } from 'react';
import type { Wanted } from '../../taskpane/app/wanted';
import type { Workbook } from '../../workbook/workbook';
import { loadPane } from './heavyParts';
import type { FunctionMetadata } from '../../workbook/functionMetadata';

const NARROW = '(max-width: 640px)';

/** Whether there is no room for sheet and pane beside each other; the same width as in the page's style sheet. */
function useNarrow(): boolean {
  return useSyncExternalStore(
    changed => {
      const query = matchMedia(NARROW);
      query.addEventListener('change', changed);
      return () => query.removeEventListener('change', changed);
    },
    () => matchMedia(NARROW).matches,
  );
}

const TaskPane = lazy(async () => ({ default: (await loadPane()).TaskPane }));

interface PaneDockProps {
  readonly workbook: Workbook | undefined;
  readonly functions: readonly FunctionMetadata[];
  readonly wanted: Wanted | undefined;
}

/** The task pane at the right of the sheet, where Excel docks it, or over the sheet on a narrow page; it can be put away. */
export function PaneDock({ workbook, functions, wanted }: PaneDockProps) {
  const isNarrow = useNarrow();
  const [open, setOpen] = useState(!isNarrow);
  const [granted, setGranted] = useState(wanted);
  if (wanted !== granted) {
    setGranted(wanted);
    // On a narrow page the pane covers the sheet: it is opened by hand only.
    if (!isNarrow) setOpen(true);
  }
  return (
    <aside className={open ? 'dock' : 'dock closed'} aria-label="Task pane">
      <button type="button" className="toggle" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? (isNarrow ? 'Back to the sheet' : 'Hide task pane') : 'Task pane'}
      </button>
      {open && workbook && (
        <div className="pane">
          <Suspense fallback={<p>Loading the task pane …</p>}>
            <TaskPane workbook={workbook} functions={functions} wanted={wanted} />
          </Suspense>
        </div>
      )}
    </aside>
  );
}
