import { called, col, FakeCellError } from '../host/customFunctions';
import { cutLength, lengthChange, lengthLimits, overallLength, routeLength } from '../../src/functions/length';
import { processorTime } from '../processorTime';

const one = (value: unknown): any[][] => [[value]];

describe('CUTLENGTH', () => {
  test('subtracts both cut-offs and adds the allowance; single values serve all rows', () => {
    expect(called(() => cutLength(col(1000, 1500), one(40), one(52.5), null as never))).toEqual([[907.5], [1407.5]]);
    expect(called(() => cutLength(one(1000), col(40, 50), one(52.5), one(2)))).toEqual([[909.5], [899.5]]);
  });

  test('0.1 + 0.2 does not leak into a cell', () => {
    expect(called(() => cutLength(one(10.3), one(0.1), one(0.2)))).toEqual([[10]]);
  });

  test('a negative cut-off makes the cut longer', () => {
    expect(called(() => cutLength(one(500), one(-12), one(0)))).toEqual([[512]]);
  });

  test('reads text numbers and fractions', () => {
    expect(called(() => cutLength(col(`4' 3 1/2"`, '27-1/2', ' 60 '), col('1 1/2', '3/8', '.94'), one('1/2"')))).toEqual([
      [49.5],
      [26.625],
      [58.56],
    ]);
  });

  test('a decimal comma is read; one that may part thousands is refused with both readings', () => {
    expect(called(() => cutLength(col('12,5', '1,200', 1000), col(1, 1, '48,5"'), one(2))).flat()).toEqual([
      9.5,
      '#VALUE! overall length is "1,200": its comma may mean decimals or thousands; write 1.200 or 1200',
      949.5,
    ]);
  });

  test('each bad row has its own error, naming what came; the others are answered', () => {
    const rows = cutLength(col(1000, 'abc', null, 0, -5, true, 40), col(40, 40, 'nonsense', 40, 40, 40, 45000), one(50));
    expect(called(() => rows)).toEqual([
      [910],
      ['#VALUE! overall length is "abc": enter a length, like 12.5, 3/8 or 1 1/2'],
      [''],
      ['#VALUE! overall length is blank or zero: fill it in'],
      ['#VALUE! overall length is -5: it must be more than 0'],
      ['#VALUE! overall length is TRUE: enter a length, like 12.5, 3/8 or 1 1/2'],
      ['#VALUE! cut-off A is 45000: that looks like a date; format the cell as text and type the fraction again'],
    ]);
  });

  test('a blank cut-off is an error of its row, a blank allowance is none', () => {
    expect(called(() => cutLength(col(1000, 1000), col('', 40), one(50), col(2, '  ')))).toEqual([
      ['#VALUE! cut-off A is blank: fill it in'],
      [910],
    ]);
  });

  test('a date is not asked of an overall length: 40,000 mm is a hose', () => {
    expect(called(() => cutLength(one(40000), one(40), one(50)))).toEqual([[39910]]);
  });

  test.each([
    ['#VALUE!', '#VALUE! sent'],
    ['#N/A', '#N/A sent'],
    ['#DIV/0!', '#DIV/0! sent'],
    ['#NUM!', '#NUM! sent'],
    ['#NULL!', '#NULL! sent'],
    ['#REF!', '#N/A cut-off A holds #REF!: correct that cell first'],
    ['#NAME?', '#N/A cut-off A holds #NAME?: correct that cell first'],
    ['#SPILL!', '#N/A cut-off A holds #SPILL!: correct that cell first'],
  ])('%s in a row stays in that row, both as an error object and as an error cell value', (code, expected) => {
    const incoming = [new FakeCellError(code, 'sent'), { type: 'Error', basicType: 'Error', basicValue: code }];
    const result = called(() => cutLength(col(1000, 1000, 1000), col(...incoming, 40), one(50)));
    expect(result[0]).toEqual([expected]);
    expect(String(result[1]![0])).toMatch(new RegExp(`^${expected.split(' ')[0]!.replace(/[?/!]/g, '\\$&')}`));
    expect(result[2]).toEqual([910]);
  });

  test('data types are taken by their plain value', () => {
    const formatted = { type: 'FormattedNumber', basicType: 'Double', basicValue: 1000, numberFormat: '0.0 "mm"' };
    expect(called(() => cutLength(one(formatted), one({ type: 'String', basicValue: '40' }), one(50)))).toEqual([[910]]);
    expect(called(() => cutLength(one({ type: 'Empty', basicType: 'Empty', basicValue: '' }), one(40), one(50)))).toEqual([['']]);
  });

  test('a data type without a number in it is named as such', () => {
    const entity = { type: 'Entity', text: 'Alder', basicType: 'Error', basicValue: '#VALUE!', properties: {} };
    expect(called(() => cutLength(one(entity), one(40), one(50)))).toEqual([
      ['#VALUE! this cell holds a data type that has no plain value'],
    ]);
    expect(called(() => cutLength(one({ basicType: 'Error', basicValue: '#N/A' }), one(40), one(50)))).toEqual([['#N/A ']]);
  });

  test('columns of unequal height and blocks are refused as a whole', () => {
    expect(called(() => cutLength(col(1, 2, 3), col(1, 2), one(1)))).toEqual([
      ['#VALUE! overall length has 3 rows, cut-off A has 2: give columns of the same number of rows, or single values'],
    ]);
    expect(called(() => cutLength([[1, 2]], one(1), one(1)))).toEqual([
      ['#VALUE! overall length came as 2 columns: give one value or one column'],
    ]);
  });

  test('huge numbers and cut-offs that leave no hose are errors, never NaN or Infinity', () => {
    expect(called(() => cutLength(col(1e308, 100), one(60), one(50)))).toEqual([
      ['#VALUE! overall length is 1e+308: that is too large to be right; check the cell'],
      ['#VALUE! cut length would be -10: the cut-offs leave no hose; check overall length and cut-offs'],
    ]);
  });

  test('a whole column with 25 filled rows is answered row by row', () => {
    const cells: any[][] = Array.from({ length: 1_048_576 }, (_, row) => [row < 25 ? 1000 + row : null]);
    const result = cutLength(cells, one(40), one(50));
    expect([result.length, result[24], result[25], result[1_048_575]]).toEqual([1_048_576, [934], [''], ['']]);
  });

  test('100,000 rows are answered in a few seconds', () => {
    const spent = processorTime();
    const result = cutLength(
      Array.from({ length: 100_000 }, (_, row) => [1000 + row / 10]),
      one(40.3),
      one(50.4),
    );
    expect(result[99_999]).toEqual([10909.2 - 0]);
    expect(spent()).toBeLessThan(5000);
  });
});

test('OVERALLLENGTH is the way back, with the same rules', () => {
  expect(called(() => overallLength(col(910, null, 'x'), one(40), one(50), one(-2)))).toEqual([
    [1002],
    [''],
    ['#VALUE! cut length is "x": enter a length, like 12.5, 3/8 or 1 1/2'],
  ]);
  expect(called(() => overallLength(one(10), one(-20), one(0)))).toEqual([
    ['#VALUE! overall length would be -10: check cut length, cut-offs and allowance'],
  ]);
});

describe('LENGTHLIMITS', () => {
  test('gives shortest and longest a row; the unit chooses the rule; errors and blanks fill both cells', () => {
    expect(called(() => lengthLimits(col(1000, null, 'x'), one(12.7), one('mm')))).toEqual([
      [996, 1012],
      ['', ''],
      Array(2).fill('#VALUE! overall length is "x": enter a length, like 12.5, 3/8 or 1 1/2'),
    ]);
    expect(called(() => lengthLimits(one('20 1/2"'), one('1/2'), one(' IN '), one(null)))).toEqual([[20.25, 20.75]]);
    for (const rule of ['sae j517', ' SAE\u00a0 J517']) {
      expect(called(() => lengthLimits(one(304.8), one(12.7), one('mm'), one(rule)))).toEqual([[301.625, 307.975]]);
    }
  });

  test.each([
    ['cm', null, '#VALUE! unit is "cm": enter "mm" or "in"'],
    [null, null, '#VALUE! unit is blank: fill it in'],
    ['mm', 'ISO', '#VALUE! rule is "ISO": enter "DIN 20066" or "SAE J517"'],
  ])('unit %s and rule %s: %s', (unit, rule, expected) => {
    expect(called(() => lengthLimits(one(1000), one(12.7), one(unit), one(rule)))).toEqual([[expected]]);
  });

  test('inches in a call in millimetres are found by their mark; a bore of 0 is a blank', () => {
    expect(called(() => lengthLimits(one('12"'), one(12.7), one('mm')))[0]![0]).toMatch(
      /^#VALUE! overall length is "12"": that is in inches/,
    );
    expect(called(() => lengthLimits(one(500), one(0), one('mm')))[0]![0]).toBe('#VALUE! bore is blank or zero: fill it in');
  });

  test('a bore that the sheet made a date of is found, an overall length of 40,000 mm is one', () => {
    expect(called(() => lengthLimits(one(100), one(45725), one('in')))[0]![0]).toMatch(
      /^#VALUE! bore is 45725: that looks like a date/,
    );
    expect(called(() => lengthLimits(one(40000), one(12.7), one('mm')))).toEqual([[39600, 41200]]);
  });

  test('an error as unit is passed on for the whole call', () => {
    expect(called(() => lengthLimits(one(500), one(12), one(new FakeCellError('#DIV/0!'))))).toEqual([['#DIV/0! ']]);
  });
});

test('LENGTHCHANGE takes 4 % and 2 % unless told, and refuses percentages typed as whole numbers', () => {
  expect(called(() => lengthChange(col(1000, ''), null as never, null as never))).toEqual([
    [960, 1020],
    ['', ''],
  ]);
  expect(called(() => lengthChange(one(1000), one(0), one(0.015)))).toEqual([[1000, 1015]]);
  expect(called(() => lengthChange(one(1000), one('4%')))).toEqual([
    ['#VALUE! shorten is "4%": enter a fraction, like 0.04 for 4 %'],
  ]);
  expect(called(() => lengthChange(one(1000), one(4)))).toEqual([
    ['#VALUE! shorten is 4: enter a fraction below 1: 4 % is 0.04'],
  ]);
});

describe('ROUTELENGTH', () => {
  test('gives the published test free length (SAE J343:2016, r 180, d 22)', () => {
    expect(routeLength(one(50.8), one(180), one(180), one(22))[0]![0]).toBeCloseTo(650.844, 3);
  });

  test('takes lists of straights and of bends; blank rows are skipped', () => {
    const [[length]] = routeLength(col(100, null, 200), col(50, '', 50), col(90, '', 90)) as [[number]];
    expect(length).toBeCloseTo(300 + Math.PI * 50, 10);
  });

  test('a radius belongs to the angle in its row: a blank beside a filled cell is an error, never a shift', () => {
    const route = (radii: any[][], angles: any[][]) => called(() => routeLength(one(100), radii, angles));
    expect(route(col(50, '', 60), col(90, 45, ''))).toEqual([['#VALUE! bend radius is blank: fill it in']]);
    expect(route(col(50, 60, 70), col(90, '', 30))).toEqual([['#VALUE! bend angle is blank: fill it in']]);
    expect(route(col(50, 60, ''), col(90, 45))).toEqual([
      ['#VALUE! bend radius has 3 rows, bend angle 2: give one radius for all bends, or one for each angle'],
    ]);
    expect(route(one(50), col(90, '', 90))).toEqual([[expect.closeTo(100 + Math.PI * 50, 10)]]);
    expect(route(one(0), one(0))).toEqual([[100]]);
    expect(route(one(null), one(null))).toEqual([['#VALUE! bend radius is blank: fill it in']]);
  });

  test('an angle is in degrees, without inch and foot marks; an outside diameter is no date', () => {
    expect(called(() => routeLength(one(1), one(10), one("90'")))[0]![0]).toBe(
      `#VALUE! bend angle is "90'": inch and foot marks belong to lengths; enter an angle in degrees without one`,
    );
    expect(called(() => routeLength(one(1), one(10), one(90), one(45725)))[0]![0]).toMatch(
      /outside diameter is 45725: .* a date/,
    );
  });

  test('the first error value is returned; a missing radius is named', () => {
    expect(called(() => routeLength(one(1), one(new FakeCellError('#REF!')), one(90)))).toEqual([
      ['#N/A bend radius holds #REF!: correct that cell first'],
    ]);
    expect(called(() => routeLength(one(1), one(0), one(90)))).toEqual([['#VALUE! bend radius is blank or zero: fill it in']]);
    expect(called(() => routeLength(one(null), one(10), one(90)))).toEqual([['#VALUE! straights is blank: fill it in']]);
  });
});
