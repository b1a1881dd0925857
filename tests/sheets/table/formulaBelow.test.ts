import { formulaBelow } from '../../../src/sheets/table/formulaBelow';

test.each([
  ['=HOSE.ASSEMBLY(Catalogue,A10,B10,C10,D10)', '=HOSE.ASSEMBLY(Catalogue,A11,B11,C11,D11)'],
  ['=HOSE.SELLPRICE(T10,$B$5,$B$6,$B$7)', '=HOSE.SELLPRICE(T11,$B$5,$B$6,$B$7)'],
  [
    '=IF(A10="row A10",\'Rates A10\'!$B$2,$C10)',
    '=IF(A10="row A10",\'Rates A10\'!$B$2,$C10)'.replace('IF(A10', 'IF(A11').replace('$C10', '$C11'),
  ],
  ['=LOG10(D10)+Total10', '=LOG10(D11)+Total10'],
])('%s a row further down is %s', (formula, below) => expect(formulaBelow(formula, 9, 1)).toBe(below));

test.each([['=SUM(E2:E10)'], ['=HOSE.CUTLENGTH(A10:A20,B10:B20,C10:C20)'], ['=[@Hose]&""'], ['=A10#'], ['']])(
  '%s is not of one row and is not carried on',
  formula => expect(formulaBelow(formula, 9, 1)).toBeUndefined(),
);
