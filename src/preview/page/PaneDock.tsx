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
}

/** The task pane at the right of the sheet, where Excel docks it; it can be put away. */
export function PaneDock({ workbook, functions }: PaneDockProps) {
  const [open, setOpen] = useState(true);
  return (
    <aside className={open ? 'dock' : 'dock closed'} aria-label="Task pane">
      <button type="button" className="toggle" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'Hide task pane' : 'Task pane'}
      </button>
      {open && workbook && (
        <div className="pane">
          <Suspense fallback={<p>Loading the task pane …</p>}>
            <TaskPane workbook={workbook} functions={functions} />
          </Suspense>
        </div>
      )}
    </aside>
  );
}
