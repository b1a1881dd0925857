const OURS = /(?:_xldudf_HOSE_|\bHOSE\.)[A-Z0-9]+\s*\(/i;
const STORED = /_xldudf_HOSE_([A-Z0-9]+)/gi;

/** Enters again every formula of ours that shows #NAME?, as happens to a file that was opened before the add-in. Two syncs. */
export async function reenterUnknownNames(context: Excel.RequestContext): Promise<number> {
  const { worksheets } = context.workbook;
  worksheets.load('items/name');
  await context.sync();
  const used = worksheets.items.map(worksheet => worksheet.getUsedRangeOrNullObject(true));
  for (const range of used) range.load('formulas,values');
  await context.sync();

  let count = 0;
  for (const range of used.filter(range => !range.isNullObject)) {
    range.formulas.forEach((row, r) =>
      row.forEach((formula, c) => {
        if (range.values[r]![c] !== '#NAME?' || typeof formula !== 'string' || !OURS.test(formula)) return;
        range.getCell(r, c).formulas = [[formula.replace(STORED, 'HOSE.$1')]];
        count += 1;
      }),
    );
  }
  if (count > 0) await context.sync();
  return count;
}
