import { lazy, Suspense, useState } from 'react';
import type { Workbook } from '../../host/workbook';
import type { FunctionMetadata } from '../../host/functionMetadata';

const TaskPane = lazy(async () => {
  const loaded = await import(/* webpackChunkName: "taskpane" */ '../../taskpane/TaskPane');
  return { default: loaded.TaskPane };
});

interface PaneDockProps {
  readonly workbook: Workbook | undefined;
  readonly functions: readonly FunctionMetadata[];
  /** Panel to open; a new object is a new wish. */
  readonly wanted: { readonly panel: string } | undefined;
}

/** The task pane at the right of the sheet, where Excel docks it; it can be put away. */
export function PaneDock({ workbook, functions, wanted }: PaneDockProps) {
  const [open, setOpen] = useState(true);
  const [granted, setGranted] = useState(wanted);
  if (wanted !== granted) {
    setGranted(wanted);
    setOpen(true);
  }
  return (
    <aside className={open ? 'dock' : 'dock closed'} aria-label="Task pane">
      <button type="button" className="toggle" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'Hide task pane' : 'Task pane'}
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
