/**
 * Year and month until which an assembly made now may be used: `2032-11`; "" where nobody says how long.
 * DIN 20066:2002 has 6 years from the day of making, at most 2 of them in store.
 * @param today `2026-11-29`
 * @param months how long it may be used
 */
export function usableUntil(today: string, months: number | undefined): string {
  if (months === undefined) return '';
  const [year, month] = today.split('-').map(Number) as [number, number];
  const last = year * 12 + (month - 1) + months;
  return `${Math.floor(last / 12)}-${String((last % 12) + 1).padStart(2, '0')}`;
}
