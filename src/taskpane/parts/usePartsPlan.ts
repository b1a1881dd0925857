import { useEffect, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import { today } from '../../sheets/table/today';
import type { LoadedCatalogue } from '../../sheets/parts/loadedCatalogue';
import { partsWorkbook } from '../../sheets/parts/partsWorkbook';
import { planParts, type PartsPlan } from '../../sheets/parts/planParts';
import { errorSentence } from '../../workbook/errorSentence';

/** What would be written, or why it cannot be. */
export type Planned =
  | { readonly status: 'none' | 'planning' }
  | { readonly status: 'refused'; readonly reason: string }
  | { readonly status: 'ready'; readonly plan: PartsPlan };

/** Plans the writing of a loaded catalogue against the workbook as it stands now. */
export async function freshPlan(
  workbook: Workbook,
  standing: WorkbookCatalogue | undefined,
  { chosen }: LoadedCatalogue,
): Promise<PartsPlan> {
  return planParts(chosen, await partsWorkbook(workbook, standing, chosen, today()));
}

/** The plan of a loaded catalogue, made anew whenever one of the two changes. */
export function usePartsPlan(
  workbook: Workbook,
  standing: WorkbookCatalogue | undefined,
  result: LoadedCatalogue | undefined,
): Planned {
  const [planned, setPlanned] = useState<{ readonly of: LoadedCatalogue; readonly planned: Planned }>();
  const ready = result?.catalogue ? result : undefined;
  useEffect(() => {
    if (!ready) return undefined;
    let isLate = false;
    freshPlan(workbook, standing, ready).then(
      plan => !isLate && setPlanned({ of: ready, planned: { status: 'ready', plan } }),
      (error: unknown) => {
        const reason = errorSentence(error);
        if (!isLate) setPlanned({ of: ready, planned: { status: 'refused', reason } });
      },
    );
    return () => {
      isLate = true;
    };
  }, [workbook, standing, ready]);
  if (!ready) return { status: 'none' };
  return planned?.of === ready ? planned.planned : { status: 'planning' };
}
