import { cardTable } from '../../../src/sheets/jobs/cardHeadings';
import { sheetContent } from '../table/sheetContent';

test.each([
  ['Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)'],
  ['Tube', 'End 1', 'End 2', 'OAL'],
  ['Hose', 'Coupling left', 'Coupling right', 'Length overall'],
])('headings %j, as the view Columns knows them, are found for the cards', (...headings) => {
  const table = cardTable(sheetContent([headings, ['Larch DN 12', 'straight', 'elbow', 1200]]))!;
  expect((['hose', 'fittingA', 'fittingB', 'overall'] as const).map(field => table.columns[field]?.index)).toEqual([0, 1, 2, 3]);
});
