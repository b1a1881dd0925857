/**
 * A count with its noun.
 * @example countedText(2, 'hose') // "2 hoses"
 */
export const countedText = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
