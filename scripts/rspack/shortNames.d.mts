export const smallLetters: { get(number: number): string };
export function shortNames(): Map<string, string>;
