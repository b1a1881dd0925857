import { functionCall } from '../../src/workbook/functionCall';

test('a call is taken apart into references, constants, names, left-out arguments and expressions', () => {
  const call = functionCall(`=HOSE.CRIMPCHECK(G5:J5,'Bench record'!$K$5,{1,2;3,4},,"a ""b"", c",Limit,B2*2,5%)`);
  expect(call).toMatchObject({ id: 'CRIMPCHECK', isWhole: true });
  expect(call!.arguments).toEqual([
    { kind: 'reference', text: 'G5:J5', sheet: undefined, address: 'G5:J5' },
    { kind: 'reference', text: `'Bench record'!$K$5`, sheet: 'Bench record', address: 'K5' },
    {
      kind: 'constant',
      text: '{1,2;3,4}',
      cells: [
        [1, 2],
        [3, 4],
      ],
    },
    { kind: 'omitted', text: '' },
    { kind: 'constant', text: '"a ""b"", c"', cells: [['a "b", c']] },
    { kind: 'name', text: 'Limit' },
    { kind: 'expression', text: 'B2*2' },
    { kind: 'constant', text: '5%', cells: [[0.05]] },
  ]);
});

test('a call inside another formula is found, and known not to be the whole', () => {
  expect(functionCall('=INDEX(HOSE.CRIMPSETUP(Catalogue,A2,B2),1,2)')).toMatchObject({ id: 'CRIMPSETUP', isWhole: false });
  expect(functionCall('=_xldudf_HOSE_CUTLENGTH(A1,B1,C1)')).toMatchObject({ id: 'CUTLENGTH', isWhole: true });
});

test.each(['', '=SUM(A1:A3)', '=HOSE.CUTLENGTH(A1,B1', 'HOSE', '=HOSEPIPE(1)'])('%s has no call of ours', formula => {
  expect(functionCall(formula)).toBeUndefined();
});
