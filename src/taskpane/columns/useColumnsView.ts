import type { Workbook } from '../../host/workbook';
import { useSettledView } from '../sheets/useSettledView';
import { columnsView, type ColumnsView } from './columnsView';

const read = (workbook: Workbook) => columnsView(workbook);

/** The table around the selection. */
export const useColumnsView = (workbook: Workbook): ColumnsView => useSettledView(workbook, read).view;
