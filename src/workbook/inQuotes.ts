/** A text as a formula has it. */
export const inQuotes = (text: string): string => `"${text.replace(/"/g, '""')}"`;
