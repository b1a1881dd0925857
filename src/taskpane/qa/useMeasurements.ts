import type { Workbook } from '../../workbook/workbook';
import { useSettledView } from '../controls/useSettledView';
import { isSameView } from '../../sheets/crimps/isSameView';
import { measurementsView, type MeasurementsView } from '../../sheets/crimps/measurementsView';

const read = (workbook: Workbook) => measurementsView(workbook);

/** The measurements around the selection; moving on within them changes nothing. */
export const useMeasurements = (workbook: Workbook): MeasurementsView => useSettledView(workbook, read, isSameView).view;
