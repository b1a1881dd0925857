/** Text stays text: Excel would read `=1+1` as a formula and `3/8` as a date. Plain words need no mark. */
export function literal(value: string | number | boolean): string | number | boolean {
  if (typeof value !== 'string' || value === '') return value;
  const words = /^\p{L}[\p{L} ,.;:()°-]*$/u.test(value) && !/^(?:true|false)$/i.test(value);
  return words ? value : `'${value}`;
}
