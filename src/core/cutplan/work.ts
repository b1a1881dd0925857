/** The clock is looked at after so many steps: about a hundredth of a second. */
const STEPS_A_LOOK = 3_000;
/** So many operations on floating-point numbers in a row make one step. */
const FLOPS_A_STEP = 600;

/** Counts the solver's steps (about a millionth of a second each on an ordinary machine), so that limits do not depend on the clock. */
export class Work {
  spent = 0;
  /** Set from outside (clock, cancel): everything ends at its next check. */
  stopped = false;
  private looked = 0;

  /** @param isLate the safety stop (clock, cancel), asked every few steps, so that no long step outlives it */
  constructor(
    public limit: number,
    private readonly isLate?: () => boolean,
  ) {}

  /** Adds steps. */
  spend(steps: number): void {
    this.spent += steps;
    if (!this.isLate || this.spent - this.looked < STEPS_A_LOOK) return;
    this.look();
  }

  /** Looks at the clock now. */
  look(): void {
    this.looked = this.spent;
    if (this.isLate?.()) this.stopped = true;
  }

  /** Adds operations on floating-point numbers. */
  spendFlops(flops: number): void {
    this.spend(flops / FLOPS_A_STEP);
  }

  /** True once the limit is reached or somebody stopped it. */
  get over(): boolean {
    return this.stopped || this.spent >= this.limit;
  }
}
