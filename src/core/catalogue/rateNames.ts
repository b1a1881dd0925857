/** Rates without which no cost of labour is known. */
export const NEEDED_RATES = ['set-up minutes', 'minutes per cut', 'minutes per crimp', 'labour per hour'] as const;

/** Rates that count as 0 where the table has none. */
export const ZERO_RATES = ['minutes per test', 'scrap fraction'] as const;

/** Every rate that something reads. */
export const KNOWN_RATES = [
  ...NEEDED_RATES,
  ...ZERO_RATES,
  'shortest free hose',
  'shortest free hose in diameters',
  'minimum charge',
] as const;
