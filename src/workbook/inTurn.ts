/** The same work, begun when what was asked for before has ended, well or not: on a slow host two writings would get into each other's way. */
export function inTurn<A extends unknown[], R>(work: (...args: A) => Promise<R>): (...args: A) => Promise<R> {
  let last: Promise<unknown> = Promise.resolve();
  return (...args) => {
    const next = last.then(() => work(...args));
    last = next.catch(() => undefined);
    return next;
  };
}
