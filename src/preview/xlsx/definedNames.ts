import type { IWorkbookData } from '@univerjs/core';
import type { Workbook } from 'exceljs';

/** Where the spreadsheet page keeps defined names in a workbook's data. */
const RESOURCE = 'SHEET_DEFINED_NAME_PLUGIN';

interface PageName {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  /** Id of the sheet, or this for the whole workbook. */
  readonly localSheetId: string;
}

const WHOLE_WORKBOOK = 'AllDefaultWorkbook';

/** The file's names that refer to one range each, for the page. */
export function definedNameResources(workbook: Workbook): NonNullable<IWorkbookData['resources']> {
  const names: Record<string, PageName> = {};
  workbook.definedNames.model.forEach(({ name, ranges }, index) => {
    const [range] = ranges;
    if (!range || ranges.length > 1 || name.startsWith('_xlnm')) return;
    const id = `name${index + 1}`;
    names[id] = { id, name, formulaOrRefString: range, localSheetId: WHOLE_WORKBOOK };
  });
  return [{ name: RESOURCE, data: JSON.stringify(names) }];
}

/** The page's names as `name` and the range it refers to (with sheet). */
export function definedNamesOf(data: IWorkbookData): { name: string; range: string }[] {
  const resource = data.resources?.find(({ name }) => name === RESOURCE);
  const names = Object.values(JSON.parse(resource?.data || '{}') as Record<string, PageName>);
  return names.map(({ name, formulaOrRefString }) => ({ name, range: formulaOrRefString.replace(/^=/, '') }));
}
