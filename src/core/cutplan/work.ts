/** Counts the solver's steps (about a millionth of a second each on an ordinary machine), so that limits do not depend on the clock. */
export class Work {
  spent = 0;
  /** Set from outside (clock, cancel): everything ends at its next check. */
  stopped = false;

  constructor(public limit: number) {}

  /** Adds steps. */
  spend(steps: number): void {
    this.spent += steps;
  }

  /** True once the limit is reached or somebody stopped it. */
  get over(): boolean {
    return this.stopped || this.spent >= this.limit;
  }
}
