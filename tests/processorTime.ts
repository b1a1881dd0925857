/** Starts a clock of this process's own processor time, which other work of the machine does not turn: gives milliseconds since then. */
export function processorTime(): () => number {
  const start = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  };
}
