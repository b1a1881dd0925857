import type { IUniverUIConfig } from '@univerjs/preset-sheets-core';

/** Commands of the spreadsheet library that nobody needs to try out worksheet functions. */
const NOT_NEEDED: readonly string[] = [
  'sheet.contextMenu.permission',
  'sheet.command.add-range-protection-from-toolbar',
  'sheet.command.change-sheet-protection-from-sheet-bar',
  'sheet.command.delete-worksheet-protection-from-sheet-bar',
];

/** Menu setting of the page: what is not needed is not shown. */
export const hiddenMenus: NonNullable<IUniverUIConfig['menu']> = Object.fromEntries(NOT_NEEDED.map(id => [id, { hidden: true }]));
