import { sumsRows } from '../../../src/sheets/table/sumsRows';

test.each([
  ['=SUM(E2:E9)', true],
  ['=SUBTOTAL(9,E$2:E9)', true],
  ['=E2+E3+E4', true],
  ['=SUM(E9:E9)', true],
  ['=SUM(B9:D9)', false],
  ['=SUM(B10:D10)', false],
  ['=HOSE.CUTLENGTH(D10,60,30)', false],
  ['=XLOOKUP(A10,$H$2:$H$20,$I$2:$I$20)', false],
  ['=COUNTIF($A$2:$A$20,A10)', false],
  ['=F9-E10', false],
  ['=A9+1', false],
  ['=SUM(Parts!E2:E9)', false],
  ['="E2:E9"', false],
  ['', false],
])('%s in row 10: %p', (formula, expected) => {
  expect(sumsRows(formula, 9)).toBe(expected);
});
