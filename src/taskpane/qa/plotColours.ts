/** Colours that the picture's frame sets, so that high contrast can replace them. */
export const INK = 'var(--picture-ink)';
export const GOOD = 'var(--picture-good)';
export const BAD = 'var(--picture-bad)';
