/** Sheet that inspection records are added to, and that a recall searches. */
export const RECORDS_SHEET = 'Inspection records';
