/** Today in the user's own time zone, as `2026-10-05`. */
export function today(now = new Date()): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Today with the time of day, to the minute: `2026-10-05 14:30`. */
export function thisMoment(now = new Date()): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${today(now)} ${two(now.getHours())}:${two(now.getMinutes())}`;
}
