import type { CrimpRow } from './crimpRow';

/** Names the same crimp on the same cells, also after the pane was loaded again. */
export function crimpPlace({ sheet, cells, title, end, combination }: CrimpRow): string {
  return [`${sheet}!${cells.map(({ address }) => address).join(' ')}`, title, end, combination].join('|');
}

/** What is remembered by place, but for one place. */
export function without<T>(all: Readonly<Record<string, T>>, place: string): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(all).filter(([each]) => each !== place));
}
