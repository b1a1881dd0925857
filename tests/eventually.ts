const AGAIN_MILLISECONDS = 20;
const LAST_MILLISECONDS = 10_000;

/** Asks again until the check holds, as long as a busy machine may take; then its own failure is thrown. */
export async function eventually(check: () => Promise<unknown>): Promise<void> {
  const end = Date.now() + LAST_MILLISECONDS;
  for (;;) {
    try {
      await check();
      return;
    } catch (failure) {
      if (Date.now() > end) throw failure;
    }
    await new Promise(resolve => setTimeout(resolve, AGAIN_MILLISECONDS));
  }
}
