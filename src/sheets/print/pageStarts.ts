/** Numbers of the rows, from 1, with which the pages after the first one begin. */
export function pageStarts(pages: readonly { readonly length: number }[]): readonly number[] {
  return pages.slice(0, -1).reduce<number[]>((starts, page) => [...starts, (starts.at(-1) ?? 1) + page.length], []);
}
