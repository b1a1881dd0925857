import { useEffect, useRef, useState } from 'react';
import type { ErrorValue } from '../../workbook/workbook';
import type { Spreadsheet } from './spreadsheet';

interface Shown {
  readonly error: ErrorValue;
  readonly left: number;
  readonly top: number;
}

const WIDTH = 340;

/** Shows an error's sentence beside the cell that the pointer is over; the status line tells it to those who use no pointer. */
export function ErrorTip({ spreadsheet }: { readonly spreadsheet: Spreadsheet | undefined }) {
  const pointer = useRef({ x: 0, y: 0 });
  const [shown, setShown] = useState<Shown>();

  useEffect(() => {
    const follow = ({ clientX: x, clientY: y, target }: PointerEvent) => {
      pointer.current = { x, y };
      if (!(target instanceof HTMLCanvasElement)) setShown(undefined);
    };
    const hide = () => setShown(undefined);
    document.addEventListener('pointermove', follow);
    document.addEventListener('keydown', hide);
    document.addEventListener('wheel', hide, { passive: true });
    const stop = spreadsheet?.onPointedAt(({ value }) => {
      const { x, y } = pointer.current;
      const hasSentence = typeof value === 'object' && value.sentence;
      setShown(hasSentence ? { error: value, left: Math.min(x + 14, window.innerWidth - WIDTH - 8), top: y + 18 } : undefined);
    });
    return () => {
      document.removeEventListener('pointermove', follow);
      document.removeEventListener('keydown', hide);
      document.removeEventListener('wheel', hide);
      stop?.();
    };
  }, [spreadsheet]);

  if (!shown) return null;
  return (
    <div className="tip" role="tooltip" style={{ left: shown.left, top: shown.top, maxWidth: WIDTH }}>
      <strong>{shown.error.error}</strong> {shown.error.sentence}
    </div>
  );
}
