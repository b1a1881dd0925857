import { useCallback, useEffect, useState } from 'react';
import { isBlankWorkbook } from '../../../workbook/isBlankWorkbook';
import type { Workbook } from '../../../workbook/workbook';
import { useStored } from '../../controls/useStored';
import { personOf, type Person } from './people';

/** Kept on this computer, for the person and not the workbook: whose work it is, and whether to ask above a filled workbook. */
const FRESH = { person: '', isOffered: true };

/** How the pane begins: with the question in place of the views, with a line above them, or as usual. */
export type Stage = 'question' | 'line' | 'usual';

export interface Start {
  readonly stage: Stage;
  readonly person: Person | undefined;
  /** Remembers whose work it is; undefined asks again. */
  readonly choose: (person: Person | undefined) => void;
  /** Puts the question away until the pane opens the next time. */
  readonly close: () => void;
  /** Puts the line away for good. */
  readonly dismiss: () => void;
}

/** Whether there is anything in the workbook; looked at until there is. */
function useContent(workbook: Workbook, isAsked: boolean): 'unknown' | 'blank' | 'filled' {
  const [content, setContent] = useState<'unknown' | 'blank' | 'filled'>('unknown');
  const isLooking = isAsked && content !== 'filled';
  useEffect(() => {
    if (!isLooking) return undefined;
    let isOver = false;
    const look = async () => {
      // What cannot be read is not known to be blank: the views say why.
      const isBlank = await isBlankWorkbook(workbook).catch(() => false);
      if (!isOver) setContent(isBlank ? 'blank' : 'filled');
    };
    void look();
    const stop = workbook.onSelection(() => void look());
    return () => {
      isOver = true;
      stop();
    };
  }, [workbook, isLooking]);
  return content;
}

/** The first minute in Excel; the try-out page has its own samples and tour around the pane. */
export function useStart(workbook: Workbook): Start {
  const [{ person: id, isOffered }, keep] = useStored('start', FRESH);
  const [isClosed, setIsClosed] = useState(false);
  const isExcel = workbook.host === 'excel';
  const content = useContent(workbook, isExcel && !isClosed);
  const person = isExcel ? personOf(id) : undefined;
  const close = useCallback(() => setIsClosed(true), []);
  const isLine = content === 'filled' && !person && isOffered;
  return {
    stage: isClosed || !isExcel ? 'usual' : content === 'blank' ? 'question' : isLine ? 'line' : 'usual',
    person,
    choose: chosen => keep({ person: chosen?.id ?? '' }),
    close,
    dismiss: () => keep({ isOffered: false }),
  };
}
