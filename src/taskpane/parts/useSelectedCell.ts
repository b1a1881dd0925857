import { useEffect, useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { cellAddress } from '../../workbook/a1';

/** The first selected cell as `Jobs!B7`; "" until it is known. */
export function useSelectedCell(workbook: Workbook): string {
  const [cell, setCell] = useState('');
  useEffect(() => {
    let isOver = false;
    const look = () =>
      void workbook.selection().then(
        content => !isOver && setCell(`${content.sheet}!${cellAddress(content)}`),
        () => undefined,
      );
    look();
    const stop = workbook.onSelection(look);
    return () => {
      isOver = true;
      stop();
    };
  }, [workbook]);
  return cell;
}
