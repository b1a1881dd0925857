import type { Workbook } from '../../workbook/workbook';
import { useSettledView } from '../sheets/useSettledView';
import { isSameView } from './isSameView';
import { measurementsView, type MeasurementsView } from './measurementsView';

const read = (workbook: Workbook) => measurementsView(workbook);

/** The measurements around the selection; moving on within them changes nothing. */
export const useMeasurements = (workbook: Workbook): MeasurementsView => useSettledView(workbook, read, isSameView).view;
