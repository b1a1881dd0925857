import { NATIVE_FUNCTIONS } from '../../src/sheets/copy/native/nativeFunctions';
import { RESULT_COLUMNS, spilledResult } from '../../src/workbook/spilledResult';
import { lookupFunctions } from '../build/lookupFunctions';
import { rowFunctions } from '../build/rowFunctions';

const ASSEMBLY = 'HOSE.ASSEMBLY(Catalogue,B2:B9,C2:C9,D2:D9,E2:E9)';

test.each([
  [`=${ASSEMBLY}`, [1, 2, 3, 4], 8],
  ['=_xldudf_HOSE_CRIMPDETAIL(E3:H3,I3,J3)', [1, 2, 3, 4], 1],
  [`=CHOOSECOLS(${ASSEMBLY},1,4)`, [1, 4], 8],
  ['= CHOOSECOLS( HOSE.CRIMPDETAIL(E3:H3,I3,J3) , 4, 2 )', [4, 2], 1],
  [`=INDEX(${ASSEMBLY},0,4)`, [4], 8],
  [`=INDEX(${ASSEMBLY},1,4)`, [4], 1],
  [`=IFERROR(ROUNDDOWN(INDEX(${ASSEMBLY},0,2),0),INDEX(${ASSEMBLY},0,2))`, [2], 8],
  ['=HOSE.CUTLENGTH(B2:B9*25.4,C2,D2)', [1], 8],
  // What is looked up in a table elsewhere makes no rows.
  ["=HOSE.NEXTDIAL(D2,E2:H2,I2,J2,INDEX('Our machines'!$F$2:$F$31,MATCH(C2,'Our machines'!$A$2:$A$31,0)))", [1], 1],
] as const)('%s fills the columns %j over %i rows', (formula, columns, rows) =>
  expect(spilledResult(formula)).toMatchObject({ columns, rows }),
);

test.each([
  `=IFERROR(${ASSEMBLY},"")`,
  `=IFERROR(ROUNDDOWN(INDEX(${ASSEMBLY},0,2),0),INDEX(${ASSEMBLY},0,3))`,
  `=CHOOSECOLS(${ASSEMBLY},5)`,
  '=HOSE.CUTPLAN(A2:A9,B2:B9,C2,D2,3)',
  '=HOSE.CUTLENGTH(A2,B2,C2)+HOSE.CUTLENGTH(A3,B3,C3)',
  '=SORT(A2:A9)',
])('%s is none of the results that are laid out by rows', formula => expect(spilledResult(formula)).toBeUndefined());

test('the call of a column that is rounded down is found where it is in the formula', () => {
  const formula = `=IFERROR(ROUNDDOWN(INDEX(${ASSEMBLY},0,2),0),INDEX(${ASSEMBLY},0,2))`;
  const { call, roundedTo } = spilledResult(formula)!;
  expect([formula.slice(call.from, call.to), roundedTo]).toEqual([ASSEMBLY, 0]);
});

test('the columns of the results agree with the plain formulas of the copies', () => {
  const both = Object.entries(NATIVE_FUNCTIONS).filter(([id]) => id in RESULT_COLUMNS);
  expect(both.length).toBeGreaterThan(15);
  expect(Object.fromEntries(both.map(([id]) => [id, RESULT_COLUMNS[id]]))).toEqual(
    Object.fromEntries(both.map(([id, { width }]) => [id, width])),
  );
});

test('RESULT_COLUMNS has every function with rows, as wide as the contracts of tests/build say, and no other', () => {
  const widths = [
    ...rowFunctions.map(({ id, width }) => [id, width]),
    ...lookupFunctions.map(({ id, answer }) => [id, answer.length]),
  ];
  expect(RESULT_COLUMNS).toEqual(Object.fromEntries(widths));
});
