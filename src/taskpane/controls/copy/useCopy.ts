import { useEffect, useMemo, useState } from 'react';
import { copyChanges } from '../../../sheets/copy/copyChanges';
import { readCopySource, type CopySource } from '../../../sheets/copy/copySource';
import type { CopyKind, CopyWishes } from '../../../sheets/copy/copyWishes';
import { planCopy, type PlannedCopy } from '../../../sheets/copy/planCopy';
import { sheetTicks } from '../../../sheets/copy/sheetTicks';
import { today } from '../../../sheets/table/today';
import type { Workbook } from '../../../workbook/workbook';
import { useRun } from '../useRun';
import type { HostServices } from '../viewProps';

/** What was chosen. Of a sheet that nobody ticked or unticked `sheetTicks` decides. */
export interface CopyChoice {
  readonly kind: CopyKind;
  readonly withCosts: boolean;
  readonly withParts: boolean;
  readonly sheets: Readonly<Record<string, boolean>>;
}

/** A copy that was made. */
export interface MadeCopy {
  readonly planned: PlannedCopy;
  /** Sheets that were written; undefined where a file was. */
  readonly written: readonly string[] | undefined;
}

const FOR_A_CUSTOMER: CopyChoice = { kind: 'values', withCosts: false, withParts: false, sheets: {} };

/** The form of a copy: what is chosen, the sheets there are, and the making of it. */
export function useCopy(workbook: Workbook, services: HostServices) {
  const [choice, setChoice] = useState(FOR_A_CUSTOMER);
  const [source, setSource] = useState<CopySource>();
  const [outcome, run] = useRun<MadeCopy>();
  useEffect(() => {
    let isShown = true;
    readCopySource(workbook).then(
      found => isShown && setSource(found),
      () => undefined,
    );
    return () => {
      isShown = false;
    };
  }, [workbook]);
  const sheets = useMemo(() => (source ? sheetTicks(source, choice) : []), [source, choice]);
  /** Another kind is for somebody else: an office calculates with costs and parts, a customer sees neither. */
  const change = (part: Partial<CopyChoice>) =>
    setChoice(before => {
      const isOther = part.kind !== undefined && part.kind !== before.kind;
      const ticks = isOther && { withCosts: part.kind === 'formulas', withParts: part.kind === 'formulas' };
      return { ...before, ...ticks, ...part };
    });
  const copyTo = (target: CopyWishes['target']) =>
    run(async () => {
      // What stands in the workbook now is copied, not what stood there when the form was opened.
      const fresh = await readCopySource(workbook);
      setSource(fresh);
      const ticked = sheetTicks(fresh, choice).flatMap(({ name, isTicked }) => (isTicked ? [name] : []));
      const { kind, withCosts, withParts } = choice;
      const planned = planCopy(fresh, { sheets: ticked, kind, withCosts, withParts, target, today: today() });
      if (target === 'file') {
        const done = await services.downloadCopy(planned.copy, `Copy without Benchrow ${today()}.xlsx`);
        if (!done) throw new Error('There are no downloads here. Write the copy as new sheets.');
        return { planned, written: undefined };
      }
      await workbook.write(copyChanges(planned.copy));
      return { planned, written: planned.copy.sheets.map(({ name }) => name) };
    });
  return { choice, change, sheets, outcome, copyTo };
}
