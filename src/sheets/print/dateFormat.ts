/** Number format of the days that Benchrow writes. */
export const DATE_FORMAT = 'yyyy-mm-dd';
