import type { IUniverUIConfig } from '@univerjs/preset-sheets-core';

/** Commands of the spreadsheet library that nobody needs to try out worksheet functions. */
const NOT_NEEDED: readonly string[] = [];

/** Menu setting of the page: what is not needed is not shown. */
export const hiddenMenus: NonNullable<IUniverUIConfig['menu']> = Object.fromEntries(NOT_NEEDED.map(id => [id, { hidden: true }]));
