import { currencyFormatOf, decimalsOf, moneyFormatOf } from '../../../src/sheets/catalogue/currencyFormat';
import { belowCost } from '../../../src/sheets/quote/belowCost';
import { FRESH_QUOTE, type QuoteFieldsText } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { sheetContent } from '../table/sheetContent';

const CLASSES = [
  { name: 'Dealer', margin: 0.3 },
  { name: 'Neighbour', margin: undefined },
];
const read = (fields: Partial<QuoteFieldsText>, found?: string) =>
  readQuoteSettings({ ...FRESH_QUOTE, margin: '40 %', ...fields }, CLASSES, found);

test('shares may be per cent or fractions, breaks in any order', () => {
  const { settings } = read({ margin: '0.4', breaks: '50; 1 10' });
  expect(settings).toMatchObject({ margin: 0.4, breaks: [1, 10, 50], roundTo: 0.01, format: '0.00' });
  expect(read({ margin: '37.5 %' }).settings!.margin).toBe(0.375);
});

test('amounts that are left blank stay open, zeros are zeros', () => {
  expect(read({}).settings).toMatchObject({ least: undefined, callOut: undefined, minimumCharge: undefined });
  expect(read({ callOut: '0' }).settings!.callOut).toBe(0);
});

test('a class of the user’s table takes the place of a typed margin', () => {
  expect(read({ margin: '', customerClass: 'Dealer' }).settings).toMatchObject({ customerClass: 'Dealer', margin: undefined });
  expect(read({ margin: '', customerClass: 'No longer there' }).mistakes.margin).toMatch(/^Margin is blank/);
});

test('a class without a usable margin is a mistake, not a price', () => {
  const { settings, mistakes } = read({ customerClass: 'Neighbour' });
  expect(settings).toBeUndefined();
  expect(mistakes.customerClass).toMatch(/class Neighbour has no margin/);
});

test.each<[string, Partial<QuoteFieldsText>, keyof ReturnType<typeof read>['mistakes'], RegExp]>([
  ['a blank margin is asked for, not taken as 0', { margin: '' }, 'margin', /blank: enter a share/],
  ['40 without its sign', { margin: '40' }, 'margin', /enter 40 % or 0.4/],
  ['a margin of the whole price', { margin: '100 %' }, 'margin', /below 100 %/],
  ['words', { margin: 'much' }, 'margin', /"much"/],
  ['half a piece', { breaks: '1, 2.5' }, 'breaks', /whole numbers/],
  ['no piece', { breaks: '0' }, 'breaks', /more than 0/],
  ['thousands with a comma', { breaks: '1, 1,000' }, 'breaks', /^Quantity breaks are 1, 1,000: write thousands without a mark/],
  ['one quantity or two', { breaks: '1,250' }, 'breaks', /a space behind each comma/],
  ['thousands with a point', { breaks: '1.000' }, 'breaks', /without a mark/],
  ['a blank step', { roundTo: '' }, 'roundTo', /^“Round prices up to” is blank/],
  ['a validity of ages', { validDays: '99999999' }, 'validDays', /^Validity is 99999999 days: enter 3660 days or fewer/],
  ['a step finer than the format shows', { roundTo: '0.05', format: '0' }, 'roundTo', /shows 0 decimals/],
  ['a format without digits', { format: 'EUR' }, 'format', /is EUR: enter a number format with digits/],
  ['a format of dates', { format: 'dd/mm/yyyy' }, 'format', /enter a number format with digits/],
  ['a currency sign in an amount', { callOut: '€ 35' }, 'callOut', /"€ 35": enter an amount without currency, like 12.50/],
  ['a foot mark at an amount', { callOut: "3'" }, 'callOut', /"3'": inch and foot marks belong to lengths/],
  ['an inch mark at a margin', { margin: '0.4"' }, 'margin', /enter a share like 40 %/],
  ['a charge below nothing', { callOut: '-5' }, 'callOut', /not be less than 0/],
  ['half a day', { validDays: '1.5' }, 'validDays', /whole number of days/],
  ['a blank markup', { method: 'markup', markupHose: '' }, 'markupHose', /blank/],
])('%s is a mistake of its field', (_, fields, field, sentence) => {
  const { settings, mistakes } = read(fields);
  expect(settings).toBeUndefined();
  expect(mistakes[field]).toMatch(sentence);
});

test('what sells below cost is said', () => {
  const said = (fields: Partial<QuoteFieldsText>) => belowCost(read(fields).settings!, [{ name: 'Kin', margin: -0.1 }]);
  expect(said({ margin: '-5 %' })).toEqual(['A margin of -5 % sells below cost.']);
  expect(said({ margin: '0 %' })).toEqual([]);
  expect(belowCost({ margin: undefined, markups: undefined, customerClass: 'Kin' }, [{ name: 'Kin', margin: -0.1 }])).toEqual([
    'A margin of -10 % sells below cost.',
  ]);
  expect(said({ method: 'markup', markupHose: '-0.2', markupFittings: '50 %' })).toEqual([
    'A markup of -20 % on hose sells below cost.',
  ]);
});

test('the currency format is that of the first price column that has one', () => {
  const content = sheetContent([
    ['Hose', 'Made', 'Price, each (EUR)', 'Cost'],
    ['Alder DN 6', 46_300, 'on request', 2],
    ['Alder DN 8', 46_300, 7.5, 3],
  ]);
  const formats = (price: string) => content.values.map(() => ['General', 'dd/mm/yyyy', price, 'General']);
  expect(currencyFormatOf({ ...content, formats: formats('#,##0.00 "EUR"') })).toBe('#,##0.00 "EUR"');
  expect(currencyFormatOf({ ...content, formats: formats('General') })).toBeUndefined();
  expect(read({}, '#,##0.00 "EUR"').settings!.format).toBe('#,##0.00 "EUR"');
});

test.each([
  ['0.000', '0.00'],
  ['#,##0', '#,##0.00'],
  ['0.0000 "€"', '0.00 "€"'],
  ['#,##0.00 "€"', '#,##0.00 "€"'],
  ['[$€-407] #,##0', '[$€-407] #,##0.00'],
  ['_-"£"* #,##0.00_-;-"£"* #,##0.00_-', '"£"#,##0.00'],
  ['"US$" 0.0;[Red]-"US$" 0.0', '"US$" 0.00'],
  // ISO 4217: the yen has no smaller unit.
  ['[$¥-411]#,##0', '[$¥-411]#,##0'],
])('money of a sheet whose prices are shown by %s is written by %s', (found, money) => expect(moneyFormatOf(found)).toBe(money));

test.each([
  ['0', 0],
  ['0.00', 2],
  ['#,##0.00 "No. 1.234"', 2],
  ['[$£-809]#,##0.000;[Red]-0.0', 3],
])('%s shows %i decimals', (format, decimals) => expect(decimalsOf(format)).toBe(decimals));
