import { number } from '../../../src/cells/readers';
import { measureOfCell } from '../../../src/cells/sheetCell';
import { endFormKey, isEndForm } from '../../../src/core/catalogue/endFormWords';
import { headingKey, partKey } from '../../../src/core/catalogue/partName';
import { headingHolds, proposedHeading } from '../../../src/core/catalogue/proposedHeading';
import { quotedText } from '../../../src/core/quotedText';
import { splitHeading } from '../../../src/core/units/headingUnit';
import { measureFromText } from '../../../src/core/units/measureText';
import { commaAdvice, hasDecimalComma, numberFromText } from '../../../src/core/units/numberText';
import * as dates from '../../../src/core/units/sheetDate';
import { markedNumber } from '../../../src/host/catalogueFile/decimalMark';
import { processorTime } from '../../processorTime';

/** A cell holds up to 32,767 characters (Excel specifications and limits, Microsoft support). */
const N = 32_000;
const BOUND = 50;

const texts: readonly (readonly [string, string])[] = [
  ['spaces', ' '.repeat(N)],
  ['a word, spaces, a word', `1${' '.repeat(N)}x`],
  ['a number, spaces, a number', `1${' '.repeat(N)}2`],
  ['digits', '1'.repeat(N)],
  ['digits and a letter', `${'1'.repeat(N)}x`],
  ['commas', ','.repeat(N)],
  ['digits with commas', '1,'.repeat(N / 2)],
  ['digits with points', '1.'.repeat(N / 2)],
  ['fractions', '1/'.repeat(N / 2)],
  ['foot marks', "1'".repeat(N / 2)],
  ['inch marks', '"'.repeat(N)],
  ['hyphens', '1-'.repeat(N / 2)],
  ['words', 'a '.repeat(N / 2)],
  ['brackets', 'a ('.repeat(N / 3)],
  ['square brackets', '['.repeat(N)],
  ['line ends', `1${'\n'.repeat(N)}x`],
];

const readers: readonly (readonly [string, (text: string) => unknown])[] = [
  ['numberFromText', text => numberFromText(text)],
  ['hasDecimalComma', hasDecimalComma],
  ['commaAdvice', commaAdvice],
  ['measureFromText', text => measureFromText('length', text)],
  ['measureOfCell', text => measureOfCell(text, 'overall', 'length', undefined)],
  ['a number of a worksheet function', text => number({})(text, 'overall')],
  ['dayNumber', dates.dayNumber],
  ['isDateFormat', dates.isDateFormat],
  ['splitHeading', splitHeading],
  ['headingKey', headingKey],
  ['partKey', partKey],
  ['headingHolds', headingHolds],
  ['proposedHeading', text => proposedHeading('hoses', text)],
  ['endFormKey', endFormKey],
  ['isEndForm', text => isEndForm(text, undefined, text)],
  ['markedNumber', text => markedNumber(text, '.')],
];

/** The quickest of three runs: what else the machine does is no property of the reader. */
function quickest(work: () => unknown): number {
  const times = [1, 2, 3].map(() => {
    const spent = processorTime();
    try {
      work();
    } catch {
      // Refusing is an answer, too.
    }
    return spent();
  });
  return Math.min(...times);
}

describe.each(readers)('%s answers within 50 ms', (_, read) => {
  test.each(texts)('%s', (_kind, text) => expect(quickest(() => read(text))).toBeLessThan(BOUND));
});

test('a long text is quoted by its beginning', () => {
  expect(quotedText(`  ${'Alder '.repeat(5000)}`)).toBe(`"${'Alder '.repeat(7).slice(0, 40)}…"`);
  expect(quotedText(' Alder DN 12 ')).toBe('"Alder DN 12"');
});
