import { inTurn } from '../../workbook/inTurn';
import type { Workbook } from '../../workbook/workbook';
import { listenToSelection } from './listenToSelection';
import { namesOf, sheetsOf, spillParentOf, tablesOf } from './lookUp';
import { readRangesOrPieces, readSelection, readUsedOrPieces } from './readRanges';
import { reenterUnknownNames } from './reenterUnknownNames';
import { recallSetting, rememberSetting } from './remembered';
import { run } from './run';
import { sheetLayout } from './sheetLayout';
import { writeChanges } from './writeChanges';

/** The workbook that is open in Excel, through Office.js. Needs Excel's requirement set ExcelApi 1.9, as the manifest says. */
export function excelWorkbook(): Workbook {
  return {
    host: 'excel',
    sheets: () => run(sheetsOf),
    selection: readSelection,
    onSelection: listenToSelection,
    read: ranges => (ranges.length === 0 ? Promise.resolve([]) : readRangesOrPieces(ranges)),
    used: readUsedOrPieces,
    tables: sheet => run(context => tablesOf(context, sheet)),
    layout: sheetLayout,
    spillParent: cell => run(context => spillParentOf(context, cell)),
    names: () => run(namesOf),
    write: inTurn(writeChanges),
    recall: key => run(context => recallSetting(context, key)),
    remember: (key, text) => run(context => rememberSetting(context, key, text)),
    select: ({ sheet, address }) =>
      run(async context => {
        const worksheet = context.workbook.worksheets.getItem(sheet);
        worksheet.load('visibility');
        await context.sync();
        if (worksheet.visibility !== 'Visible') throw new Error(`Sheet "${sheet}" is hidden: unhide it, then try again.`);
        worksheet.activate();
        worksheet.getRange(address).select();
        await context.sync();
      }),
    reenterUnknownNames,
  };
}
