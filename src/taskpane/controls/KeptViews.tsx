import { useEffect, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { PanelBoundary } from './PanelBoundary';
import type { Panel, PanelProps } from './panelProps';
import { shownWorkbook } from '../../workbook/shownWorkbook';

/** The workbook of one view: a new object each time the view is shown again, so that whoever reads it reads it anew. */
function useWorkbookOfView(workbook: Workbook, isShown: boolean): Workbook {
  const [seen, setSeen] = useState(() => ({ workbook, isShown, shown: shownWorkbook(workbook) }));
  if (isShown && (!seen.isShown || seen.workbook !== workbook)) {
    setSeen({ workbook, isShown, shown: shownWorkbook(workbook) });
  } else if (!isShown && seen.isShown) setSeen({ ...seen, isShown });
  const { shown } = seen;
  useEffect(() => {
    if (!isShown) shown.hide();
  }, [isShown, shown]);
  return shown.workbook;
}

interface KeptViewProps extends PanelProps {
  readonly panel: Panel;
  readonly isShown: boolean;
}

function KeptView({ panel: { title, View }, isShown, workbook, functions, services }: KeptViewProps) {
  const own = useWorkbookOfView(workbook, isShown);
  return (
    <div role="tabpanel" aria-label={title} hidden={!isShown}>
      <PanelBoundary>
        <View workbook={own} functions={functions} services={services} />
      </PanelBoundary>
    </div>
  );
}

interface KeptViewsProps extends PanelProps {
  readonly views: readonly Panel[];
  readonly chosen: string;
}

/**
 * The chosen view, and behind it those that were shown before: what was typed, planned or loaded in them stays. A hidden view
 * listens to nothing.
 */
export function KeptViews({ views, chosen, ...props }: KeptViewsProps) {
  const [visited, setVisited] = useState<readonly string[]>([chosen]);
  if (!visited.includes(chosen)) setVisited([...visited, chosen]);
  return views
    .filter(({ id }) => id === chosen || visited.includes(id))
    .map(panel => <KeptView key={panel.id} panel={panel} isShown={panel.id === chosen} {...props} />);
}
