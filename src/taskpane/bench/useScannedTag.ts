import { useEffect, useRef } from 'react';
import type { ScannedTag } from '../controls/viewProps';

/** Leads to the piece of a tag that was scanned outside the view, each scan once. */
export function useScannedTag(scanned: ScannedTag | undefined, find: (text: string) => Promise<void>): void {
  const followed = useRef<ScannedTag>();
  useEffect(() => {
    if (!scanned || followed.current === scanned) return;
    followed.current = scanned;
    void find(scanned.text);
  }, [scanned, find]);
}
