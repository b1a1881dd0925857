import { Workbook } from 'exceljs';
import { cellBlockOf } from '../../../src/preview/xlsx/address';
import { pageFormats } from '../../../src/preview/xlsx/conditionalFormats';
import { fileFormats, type FileRule } from '../../../src/preview/xlsx/fileFormats';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { FORMATS_RESOURCE } from '../../../src/preview/xlsx/savedFormats';
import { writeXlsx } from '../../../src/preview/xlsx/writeXlsx';
import { workshopFile } from '../workshopFile';

const SIZE = { rowCount: 200, columnCount: 26 };
const style = {
  font: { bold: true, color: { argb: 'FF7A3E00' } },
  fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFFCE0B8' } },
} as const;
const drawnAs = (rule: object, ref = 'D2:D9') =>
  pageFormats([{ ref, rules: [{ priority: 1, style, ...rule } as FileRule] }], SIZE).drawn[0]?.rule;

// Kinds of rules and what they ask: ECMA-376 part 1, 18.3.1.10 (cfRule) and 18.18.12 (ST_CfType).
test.each<[string, object, object]>([
  [
    'a number',
    { type: 'cellIs', operator: 'greaterThan', formulae: ['18'] },
    { subType: 'number', operator: 'greaterThan', value: 18 },
  ],
  [
    'two numbers',
    { type: 'cellIs', operator: 'between', formulae: [1, '2.5'] },
    { subType: 'number', operator: 'between', value: [1, 2.5] },
  ],
  [
    'a word',
    { type: 'cellIs', operator: 'equal', formulae: ['"IN SPEC"'] },
    { subType: 'text', operator: 'equal', value: 'IN SPEC' },
  ],
  [
    'a word with quotation marks',
    { type: 'cellIs', operator: 'notEqual', formulae: ['"1/2"""'] },
    { subType: 'text', operator: 'notEqual', value: '1/2"' },
  ],
  ['another cell', { type: 'cellIs', operator: 'lessThan', formulae: ['$F$1'] }, { subType: 'formula', value: '=D2<$F$1' }],
  [
    'two other cells',
    { type: 'cellIs', operator: 'notBetween', formulae: ['A1', 'B1'] },
    { subType: 'formula', value: '=NOT(AND(D2>=A1,D2<=B1))' },
  ],
  [
    'a formula of ours',
    { type: 'expression', formulae: ['_xldudf_HOSE_CUTLENGTH(A2,B2,C2)>5'] },
    { subType: 'formula', value: '=HOSE.CUTLENGTH(A2,B2,C2)>5' },
  ],
  [
    'a text within',
    { type: 'containsText', operator: 'containsText', formulae: ['NOT(ISERROR(SEARCH("DN",D2)))'] },
    { subType: 'formula', value: '=NOT(ISERROR(SEARCH("DN",D2)))' },
  ],
  ['the largest three', { type: 'top10', rank: 3 }, { subType: 'rank', value: 3, isBottom: false, isPercent: false }],
  ['below the mean', { type: 'aboveAverage', aboveAverage: false }, { subType: 'average', operator: 'lessThan' }],
])('a rule that asks for %s is drawn', (_, rule, expected) => {
  expect(drawnAs(rule)).toMatchObject({
    type: 'highlightCell',
    ...expected,
    style: { bl: 1, cl: { rgb: '#7A3E00' }, bg: { rgb: '#FCE0B8' } },
  });
});

test('colour scales and bars are drawn, icon sets are counted', () => {
  const ends = [{ type: 'min' }, { type: 'max' }];
  expect(drawnAs({ type: 'colorScale', cfvo: ends, color: [{ argb: 'FFFFFFFF' }, { argb: 'FF63BE7B' }] })).toMatchObject({
    type: 'colorScale',
    config: [
      { color: '#FFFFFF', value: { type: 'min' } },
      { color: '#63BE7B', value: { type: 'max' } },
    ],
  });
  expect(drawnAs({ type: 'dataBar', cfvo: ends, color: { argb: 'FF638EC6' } })).toMatchObject({
    type: 'dataBar',
    config: { min: { type: 'min' }, max: { type: 'max' }, positiveColor: '#638EC6' },
  });
  expect(pageFormats([{ ref: 'A1', rules: [{ type: 'iconSet' }] }], SIZE)).toEqual({ drawn: [], undrawn: 1 });
});

test('the rule of the highest priority comes first; blocks end with the sheet', () => {
  const rule = (priority: number, value: string) => ({ type: 'cellIs', operator: 'equal', formulae: [value], priority });
  const { drawn } = pageFormats(
    [
      { ref: 'A1:XFD1048576', rules: [rule(2, '2')] },
      { ref: 'B2 D4:D5', rules: [rule(1, '1')] },
    ],
    SIZE,
  );
  expect(drawn.map(({ rule: { value }, ranges }) => [value, ranges])).toEqual([
    [1, [cellBlockOf('B2'), cellBlockOf('D4:D5')]],
    [2, [{ startRow: 0, startColumn: 0, endRow: 199, endColumn: 25 }]],
  ]);
});

async function saved(change: (resource: Record<string, any[]>) => void) {
  const rules = [
    { type: 'cellIs', operator: 'equal', formulae: ['"TIGHT"'], priority: 1, style },
    { type: 'iconSet', iconSet: '3TrafficLights', cfvo: [0, 33, 67].map(value => ({ type: 'percent', value })), priority: 2 },
  ];
  const { data } = await readXlsx(
    await workshopFile(workbook =>
      workbook.getWorksheet('Jobs')!.addConditionalFormatting({ ref: 'D2:D9', rules: rules as never }),
    ),
  );
  const resource = data.resources!.find(({ name }) => name === FORMATS_RESOURCE)!;
  const kept = JSON.parse(resource.data) as Record<string, any[]>;
  change(kept);
  resource.data = JSON.stringify(kept);
  const none = () => undefined;
  const bytes = await writeXlsx({ data, formulaOf: none, blockOf: none, valueInFile: none, filledCell: none });
  const workbook = new Workbook();
  await workbook.xlsx.load(bytes.slice().buffer as ArrayBuffer);
  return fileFormats(workbook.worksheets[0]!).map(({ ref, rules: [rule] }) => ({ ref, ...rule }));
}

test('a file keeps its rules, drawn or not', async () => {
  expect(await saved(() => {})).toMatchObject([
    {
      ref: 'D2:D9',
      type: 'cellIs',
      operator: 'equal',
      formulae: ['"TIGHT"'],
      style: { fill: { bgColor: { argb: 'FFFCE0B8' } } },
    },
    { ref: 'D2:D9', type: 'iconSet' },
  ]);
});

test('rules that were moved, changed, added and taken away in the page are so in the file', async () => {
  const added = (rule: object, cfId = 'new') => ({
    cfId,
    stopIfTrue: false,
    ranges: [cellBlockOf('E2:E9')],
    rule: { type: 'highlightCell', style: { bg: { rgb: '#ff0000' } }, ...rule },
  });
  const found = await saved(kept => {
    const [[own]] = Object.values(kept) as [[any]];
    own.ranges = [cellBlockOf('D3:D10')];
    Object.values(kept)[0]!.push(
      added({ subType: 'number', operator: 'lessThan', value: 4 }),
      added({ subType: 'text', operator: 'beginsWith', value: 'D"N' }),
      added({ subType: 'duplicateValues' }),
      added({ subType: 'formula', value: '=E2>HOSE.CUTLENGTH(A2,B2,C2)' }),
    );
  });
  expect(found).toMatchObject([
    { ref: 'D3:D10', type: 'cellIs', formulae: ['"TIGHT"'] },
    { ref: 'E2:E9', type: 'cellIs', operator: 'lessThan', formulae: ['4'], style: { fill: { bgColor: { argb: 'FFFF0000' } } } },
    { ref: 'E2:E9', type: 'expression', formulae: ['LEFT(E2,LEN("D""N"))="D""N"'] },
    { ref: 'E2:E9', type: 'expression', formulae: ['COUNTIF($E$2:$E$9,E2)>1'] },
    { ref: 'E2:E9', type: 'expression', formulae: ['E2>_xldudf_HOSE_CUTLENGTH(A2,B2,C2)'] },
    { ref: 'D2:D9', type: 'iconSet' },
  ]);
  expect(await saved(kept => delete kept[Object.keys(kept)[0]!])).toMatchObject([{ type: 'iconSet' }]);
});
