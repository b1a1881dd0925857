import type { IStyleData } from '@univerjs/core';
import type { Style } from 'exceljs';
import { pageStyle } from './cellStyle';

/** Collects cell styles of a file, each kept once under an id. */
export class StyleTable {
  readonly byId: Record<string, IStyleData> = {};
  private readonly ids = new Map<string, string>();
  private readonly known = new WeakMap<object, string | undefined>();

  /** Id of a file's style; undefined where it sets nothing. */
  idOf(style: Partial<Style>): string | undefined {
    if (this.known.has(style)) return this.known.get(style);
    const page = pageStyle(style);
    const id = page && this.idOfPage(page);
    this.known.set(style, id);
    return id;
  }

  private idOfPage(page: IStyleData): string {
    const key = JSON.stringify(page);
    const id = this.ids.get(key) ?? `style${this.ids.size + 1}`;
    this.ids.set(key, id);
    this.byId[id] = page;
    return id;
  }
}
