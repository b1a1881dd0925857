/**
 * Demanded times are those of a quiet machine. One that shares its cores may need several times as much of its processor (caches, memory collected
 * beside the work), so tests allow this many times as much: what they look for takes many times more.
 */
export const ROOM = 4;

/** Starts a clock of this process's own processor time, which other work of the machine does not turn: gives milliseconds since then. */
export function processorTime(): () => number {
  const start = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  };
}
