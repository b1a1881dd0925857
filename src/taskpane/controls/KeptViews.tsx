import { memo, useEffect, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { ViewBoundary } from './ViewBoundary';
import type { View, ViewProps } from './viewProps';
import { WhichCatalogue } from './WhichCatalogue';
import { shownWorkbook } from '../../workbook/shownWorkbook';

/** The workbook of one view: a new object each time the view is shown again, and when it is asked for, so that whoever reads it reads it anew. */
function useWorkbookOfView(workbook: Workbook, isShown: boolean): readonly [workbook: Workbook, readAnew: () => void] {
  const [seen, setSeen] = useState(() => ({ workbook, isShown, shown: shownWorkbook(workbook) }));
  if (isShown && (!seen.isShown || seen.workbook !== workbook)) {
    setSeen({ workbook, isShown, shown: shownWorkbook(workbook) });
  } else if (!isShown && seen.isShown) setSeen({ ...seen, isShown });
  const { shown } = seen;
  useEffect(() => {
    if (!isShown) shown.hide();
  }, [isShown, shown]);
  const readAnew = () => {
    shown.hide();
    setSeen({ workbook, isShown, shown: shownWorkbook(workbook) });
  };
  return [shown.workbook, readAnew];
}

interface KeptViewProps extends ViewProps {
  readonly view: View;
  readonly isShown: boolean;
}

/** Drawn anew only where something of its own changes: a press of a tab draws two views, not all that were ever shown. */
const KeptView = memo(function KeptView({
  view: { id, title, usesCatalogue, View },
  isShown,
  workbook,
  ...props
}: KeptViewProps) {
  const [own, readAnew] = useWorkbookOfView(workbook, isShown);
  return (
    <div role="tabpanel" id={`view-${id}`} aria-label={title} hidden={!isShown}>
      <ViewBoundary>
        {usesCatalogue && isShown && <WhichCatalogue workbook={own} onChosen={readAnew} />}
        <View workbook={own} {...props} />
      </ViewBoundary>
    </div>
  );
});

interface KeptViewsProps extends ViewProps {
  /** All views of the pane; one that two tabs show may come twice. */
  readonly views: readonly View[];
  /** Id of the view that is shown. */
  readonly chosen: string;
}

/**
 * The chosen view, and behind it those that were shown before: what was typed, planned or loaded in them stays. A hidden view
 * listens to nothing.
 */
export function KeptViews({ views, chosen, ...props }: KeptViewsProps) {
  const [visited, setVisited] = useState<readonly string[]>([chosen]);
  if (!visited.includes(chosen)) setVisited([...visited, chosen]);
  const kept = new Map(views.filter(({ id }) => id === chosen || visited.includes(id)).map(view => [view.id, view]));
  return [...kept.values()].map(view => <KeptView key={view.id} view={view} isShown={view.id === chosen} {...props} />);
}
