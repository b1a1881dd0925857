import jsQR from 'jsqr';
import { labelPlace, labelSheets } from '../../../src/sheets/tags/labelSheets';
import { qrPicture } from '../../../src/sheets/tags/qrPicture';
import { tagFontSize } from '../../../src/sheets/tags/tagFontSize';
import { misfits, tagPage } from '../../../src/sheets/tags/tagPage';
import { tagProblems, tagsOf } from '../../../src/sheets/tags/tag';
import { tagSheet } from '../../../src/sheets/tags/tagSheet';
import { demoCards } from '../jobs/demoCards';

const options = { maker: 'Beet Contractor Workshop (invented)', prefix: 'W41-', today: '2026-10-05' };
const tags = tagsOf(demoCards, options);

/** Pixels of a QR picture, eight a module, as a camera would deliver them. */
function pixelsOf(svg: string): { readonly data: Uint8ClampedArray; readonly size: number } {
  const scale = 8;
  const size = Number(/viewBox="0 0 (\d+)/.exec(svg)![1]) * scale;
  const data = new Uint8ClampedArray(size * size * 4).fill(255);
  for (const [, x, y] of svg.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let row = 0; row < scale; row++) {
      const start = ((Number(y) * scale + row) * size + Number(x) * scale) * 4;
      for (let pixel = 0; pixel < scale; pixel++) data.fill(0, start + pixel * 4, start + pixel * 4 + 3);
    }
  }
  return { data, size };
}

test.each(['H3-117-2', 'W41-2-6', 'Ä/ß 12', '4711', 'a-very-long-assembly-number-of-a-customer-0123456789'])(
  'the QR code of %s is read back by an independent reader (jsqr)',
  number => {
    const { data, size } = pixelsOf(qrPicture(number));
    expect(jsQR(data, size, size)?.data).toBe(number);
  },
);

test('every piece has its own number: the assembly’s, else prefix and line, and which piece of it', () => {
  expect(tags.map(tag => tag.number)).toEqual([
    'H3-117-1',
    'H3-117-2',
    'W41-2-1',
    'W41-2-2',
    'W41-2-3',
    'W41-2-4',
    'W41-2-5',
    'W41-2-6',
    'W41-3-1',
  ]);
});

test('a tag holds maker, maximum pressure with unit, year and month (DGUV 209-071, 4.3), and the length', () => {
  expect(tags[0]).toMatchObject({ maker: options.maker, pressure: 'max 275 bar', made: '2026-10', length: '1250 mm' });
});

test('pieces that were planned keep their numbers, lots and last month of use; a scrapped one gets no tag, and its number is not given again', () => {
  const planned = ['1', '2', '3'].map(nth => ({
    piece: `W41-2-${nth}`,
    lot: nth === '1' ? 'L70' : 'L71',
    reel: 'A1',
    useBy: '2032-10',
    isScrapped: nth === '2',
  }));
  const rated = { ...demoCards[1]!, quantity: 3, workingPressure: demoCards[0]!.workingPressure, pieces: planned };
  const made = tagsOf([rated], { ...options, useBy: '2032-11' });
  expect(made.map(({ number, lot, useBy }) => [number, lot, useBy])).toEqual([
    ['W41-2-1', 'L70', '2032-10'],
    ['W41-2-3', 'L71', '2032-10'],
    ['W41-2-4', '', '2032-11'],
  ]);
  expect(tagPage(made, labelSheets[0])).toContain('2026-10 · use by 2032-10 · ');
});

test('an assembly without a rating gets no tag, and that is said', () => {
  expect(tagPage(tags, labelSheets[0]).match(/class="tag"/g)).toHaveLength(3);
  expect(tagProblems(demoCards, tags, options)).toEqual(['No working pressure, so no tags, for line 2.']);
});

test('missing maker and numbers given twice are said', () => {
  const twice = [demoCards[2]!, demoCards[2]!];
  const nobody = { ...options, maker: ' ' };
  expect(tagProblems(twice, tagsOf(twice, nobody), nobody)).toEqual([
    'Enter your name as maker: a tag without it is no marking.',
    'The same number twice: W41-3-1.',
  ]);
});

test.each(labelSheets.map(sheet => [sheet.name, sheet] as const))(
  'all labels of %s lie on the page and none on another',
  (_, sheet) => {
    const count = sheet.columns * sheet.rows;
    const places = Array.from({ length: count }, (__, index) => labelPlace(sheet, index));
    const [width, height] = sheet.label;
    for (const { page, x, y } of places) {
      expect(page).toBe(0);
      expect(x + width).toBeLessThanOrEqual(sheet.page[0] + 0.001);
      expect(y + height).toBeLessThanOrEqual(sheet.page[1] + 0.001);
    }
    for (const a of places) {
      for (const b of places) {
        if (a !== b) expect(Math.abs(a.x - b.x) >= width - 0.001 || Math.abs(a.y - b.y) >= height - 0.001).toBe(true);
      }
    }
    expect(labelPlace(sheet, count).page).toBe(1);
  },
);

test('label sheets are symmetric: the margin on the right equals that on the left (geometry)', () => {
  for (const { page, label, columns, gapX, left } of labelSheets) {
    const right = page[0] - left - columns * label[0] - (columns - 1) * gapX;
    expect(Math.abs(right - left)).toBeLessThanOrEqual(0.1);
  }
});

test('labels that are gone already are skipped', () => {
  const first = /left:([\d.]+)mm;top:([\d.]+)mm/.exec(tagPage(tags, labelSheets[0], 4))!;
  const { x, y } = labelPlace(labelSheets[0], 4);
  expect([Number(first[1]), Number(first[2])]).toEqual([x, y]);
});

const LONG = {
  ...tags[0]!,
  maker: 'Landtechnikwerkstattgenossenschaft Großzuckerrübendorf und Umgebung eG (erfunden)',
  number: 'Auftrag-2026-000417-Schlauch-12-15',
};
const sizeIn = (page: string) => Number(/font-size:([\d.]+)pt/.exec(page)![1]);

test.each(labelSheets.map(sheet => [sheet.name, sheet] as const))(
  'on %s long names and numbers get a smaller font, ordinary ones keep theirs',
  (_, sheet) => {
    const ordinary = { ...LONG, maker: 'Rübenhof', number: 'W41-3' };
    expect(tagFontSize(ordinary, sheet)).toBeCloseTo(Math.min(9, sheet.label[1] / 4.6), 2);
    const small = tagFontSize(LONG, sheet)!;
    expect(small).toBeLessThanOrEqual(tagFontSize(ordinary, sheet)!);
    expect(sizeIn(tagPage([LONG], sheet))).toBe(small);
  },
);

test('on 48.5 × 25.4 mm a line holds two words of ten small letters at 5.27 points, one at 5.52, so that the seventh makes the text smaller', () => {
  // 24.13 mm beside the code are 12.39 font sizes at 5.52 points and 12.97 at 5.27; two words and a blank take 21 × 0.61 = 12.81.
  // A line of 5.52 points takes 2.34 mm of 22.4: 6 + 1.35 + 1.2 + 1 of them fit, 7 + 3.55 do not.
  const words = (count: number) => ({
    ...{ maker: Array<string>(count).fill('rübenhofen').join(' '), number: 'W-1', pressure: 'max 9 bar' },
    ...{ made: '2026-10', length: '', label: '' },
  });
  const small = labelSheets.find(({ id }) => id === '4x11')!;
  expect([6, 7].map(count => tagFontSize(words(count), small))).toEqual([5.52, 5.27]);
});

test('a tag whose text fits in no readable size is not printed cut off, but named', () => {
  const endless = { ...LONG, maker: LONG.maker.repeat(6) };
  const small = labelSheets.find(({ id }) => id === '4x11')!;
  expect(tagPage([endless, tags[0]!], small).match(/class="tag"/g)).toHaveLength(1);
  expect(misfits([endless, tags[0]!], small)).toBe(
    'Too much text for these labels, not printed: Auftrag-2026-000417-Schlauch-12-15. Take larger labels, or shorten maker or number.',
  );
  expect(misfits(tags, small)).toBe('');
});

test('the worksheet has one row a tag, as text', () => {
  const changes = tagSheet('Tags', tags);
  const values = changes.flatMap(change => (change.kind === 'values' ? change.values : []));
  expect(values).toHaveLength(4);
  expect(values[1]).toEqual([
    'H3-117-1',
    options.maker,
    'max 275 bar',
    '2026-10',
    '',
    '1250 mm',
    '',
    'Harvester 3, topper lift',
    'H3-117-1',
  ]);
  const pictures = changes.flatMap(change => (change.kind === 'picture' ? [[change.at.address, change.alt, change.svg]] : []));
  expect(pictures).toHaveLength(3);
  expect(pictures[0]).toEqual(['I2', 'QR code of H3-117-1', qrPicture('H3-117-1')]);
});
