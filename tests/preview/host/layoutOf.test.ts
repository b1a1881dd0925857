import { INTERCEPTOR_POINT, SheetInterceptorService } from '@univerjs/sheets';
import { headlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { layoutOf } from '../../../src/preview/host/layoutOf';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { emptyWorkbook } from '../../../src/preview/page/emptyWorkbook';

test('rows that a filter takes out count as hidden, like those hidden by hand', () => {
  const workbook = headlessWorkbook(emptyWorkbook().data, hostFunctions({ functions: [] }, new Map()));
  const sheet = workbook.api.getActiveWorkbook()!.getActiveSheet();
  sheet.hideRows(1, 1);
  // As the page's filter does it.
  workbook.univer
    .__getInjector()
    .get(SheetInterceptorService)
    .intercept(INTERCEPTOR_POINT.ROW_FILTERED, { priority: 1, handler: (hidden, { row }) => hidden || row === 3 });
  const { hiddenRows } = layoutOf(sheet.getSheet(), { startRow: 0, startColumn: 0, endRow: 5, endColumn: 0 });
  expect([...hiddenRows]).toEqual([1, 3]);
  workbook.dispose();
});
