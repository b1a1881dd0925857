import { createRequire } from 'node:module';

type Call = (...args: unknown[]) => unknown;

/** What the functions throw, as a host would have it. */
export class CellError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

/** The functions of dist/functions.js by id, as a spreadsheet calls them; FUNCTIONS=file takes another build. */
export function loadedFunctions(): ReadonlyMap<string, Call> {
  const found = new Map<string, Call>();
  Object.assign(globalThis, {
    CustomFunctions: { Error: CellError, ErrorCode: {}, associate: (id: string, call: Call) => found.set(id, call) },
  });
  createRequire(import.meta.url)(process.env.FUNCTIONS ?? '../dist/functions.js');
  return found;
}

/** Processor time of one call in seconds: the first one, and the middle of five more. */
export function timed(call: () => unknown, usualRuns = 5): [first: number, usual: number] {
  const times = Array.from({ length: usualRuns + 1 }, () => {
    const start = process.cpuUsage();
    call();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1e6;
  });
  return [times[0]!, times.slice(1).sort((a, b) => a - b)[Math.floor(usualRuns / 2)]!];
}
