/** How someone follows a long reading, and stops it. */
export interface Watch {
  /** Share that is done, 0 … 1; undefined where that cannot be known. */
  readonly onProgress?: (share: number | undefined) => void;
  readonly signal?: AbortSignal;
}

/** The reading was stopped by the user. */
export class Stopped extends Error {
  constructor() {
    super('Stopped.');
    this.name = 'Stopped';
  }
}

/**
 * Tells how far a reading is and lets the page breathe, so that it can be drawn and the user can stop.
 * @throws Stopped where the user has
 */
export async function breathe({ onProgress, signal }: Watch, share?: number): Promise<void> {
  onProgress?.(share);
  await new Promise(resolve => setTimeout(resolve, 0));
  if (signal?.aborted) throw new Stopped();
}
