import { useEffect, useState } from 'react';
import type { LoadedCatalogue } from '../../sheets/parts/loadedCatalogue';
import { partsInJobs, removedInUse, type RemovedInUse } from '../../sheets/parts/partsInUse';
import type { WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import type { Workbook } from '../../workbook/workbook';

const PARTS: ReadonlySet<string> = new Set(['hoses', 'fittings', 'guards']);
const NONE: readonly RemovedInUse[] = [];

/** Parts that a loaded catalogue removes though rows of the workbook name them; looked for only where some part goes. */
export function useRemovedInUse(
  workbook: Workbook,
  standing: WorkbookCatalogue | undefined,
  result: LoadedCatalogue | undefined,
): readonly RemovedInUse[] {
  const [found, setFound] = useState<{ readonly of: LoadedCatalogue; readonly removed: readonly RemovedInUse[] }>();
  const before = standing?.catalogue;
  const after = result?.catalogue;
  const isAsked = result?.changes?.some(({ kind, table }) => kind === 'removed' && PARTS.has(table)) ?? false;
  useEffect(() => {
    if (!isAsked || !standing || !before || !after || !result) return undefined;
    let isLate = false;
    const show = (removed: readonly RemovedInUse[]) => !isLate && setFound({ of: result, removed });
    partsInJobs(workbook, standing).then(
      named => show(removedInUse(before, after, named)),
      // What the catalogue itself names is known without the job sheets.
      () => show(removedInUse(before, after, [])),
    );
    return () => {
      isLate = true;
    };
  }, [workbook, standing, before, after, result, isAsked]);
  return found && found.of === result ? found.removed : NONE;
}
