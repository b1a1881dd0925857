import type { PausableClock } from './catalogueSource';

/** A time limit whose clock can stand still. */
export interface Deadline extends PausableClock {
  /** Resolves when the time is up. */
  readonly reached: Promise<void>;
  /** Takes the clock away. */
  stop(): void;
}

/** A time limit that starts to run at once. */
export function deadline(milliseconds: number): Deadline {
  let left = milliseconds;
  let since = Date.now();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let reach = () => {};
  const reached = new Promise<void>(resolve => (reach = resolve));
  const start = () => {
    since = Date.now();
    timer = setTimeout(reach, Math.max(0, left));
  };
  const stop = () => {
    clearTimeout(timer);
    timer = undefined;
  };
  start();
  return {
    reached,
    stop,
    pause() {
      if (timer === undefined) return;
      stop();
      left -= Date.now() - since;
    },
    resume() {
      if (timer === undefined) start();
    },
  };
}
