/** Events that never cease, as of a sheet that calculates all the time, are told at least this often. */
const LONGEST_MILLISECONDS = 400;

/** Tells of several events once. */
export interface ToldOnce {
  /** An event came. */
  event(): void;
  /** Nothing is told any more. */
  stop(): void;
}

/**
 * Calls a listener once for events that follow each other closely, when they have ceased: while an arrow key is held, no cell on
 * the way is looked at.
 * @param quiet milliseconds without an event after which they have ceased
 */
export function toldOnce(listener: () => void, quiet: number): ToldOnce {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let first: number | undefined;
  let stopped = false;
  const tell = () => {
    first = undefined;
    listener();
  };
  return {
    event() {
      if (stopped) return;
      const now = Date.now();
      first ??= now;
      clearTimeout(timer);
      timer = setTimeout(tell, Math.max(0, Math.min(quiet, first + LONGEST_MILLISECONDS - now)));
    },
    stop() {
      stopped = true;
      clearTimeout(timer);
    },
  };
}
