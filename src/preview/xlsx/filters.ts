import type { IRange, IWorkbookData } from '@univerjs/core';
import type { Worksheet } from 'exceljs';
import { cellBlockOf } from './address';

/** Where the spreadsheet page keeps filters in a workbook's data. */
export const FILTERS_RESOURCE = 'SHEET_FILTER_PLUGIN';

/** A sheet's filter: its table with headings, and the rows that it hides. */
export interface PageFilter {
  readonly ref: IRange;
  readonly cachedFilteredOut?: readonly number[];
}

/** The filter that a file's sheet shows; which rows it had hidden stands with the rows. */
export function readFilter({ autoFilter, rowCount, columnCount }: Worksheet): PageFilter | undefined {
  const block = typeof autoFilter === 'string' ? cellBlockOf(autoFilter) : undefined;
  if (!block || block.startRow >= rowCount || block.startColumn >= columnCount) return undefined;
  return {
    ref: { ...block, endRow: Math.min(block.endRow, rowCount - 1), endColumn: Math.min(block.endColumn, columnCount - 1) },
  };
}

/** The filter of a sheet of the page. */
export function filterOf({ resources }: IWorkbookData, sheetId: string): PageFilter | undefined {
  const kept = resources?.find(({ name }) => name === FILTERS_RESOURCE)?.data;
  return (JSON.parse(kept || '{}') as Record<string, PageFilter>)[sheetId];
}
