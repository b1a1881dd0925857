import { useEffect } from 'react';
import type { Workbook } from '../../workbook/workbook';

/**
 * Looks at once, and again whenever sheets come, go or are renamed (asked for at each move of the selection).
 * @param look the same function as long as it looks for the same
 */
export function useOnSheets(workbook: Workbook, look: () => Promise<unknown>): void {
  useEffect(() => {
    let known = '';
    const follow = async () => {
      const names = (await workbook.sheets().catch(() => [])).join('\n');
      if (names === known) return;
      known = names;
      await look();
    };
    void follow();
    return workbook.onSelection(() => void follow());
  }, [workbook, look]);
}
