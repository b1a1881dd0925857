import { partKey } from './partName';

/** An end form as it is compared: without case; `deg` is °, blanks are one. */
export const endFormKey = (text: string) =>
  partKey(text)
    .replace(/\s+/g, ' ')
    .replace(/[º˚]| ?deg(?:rees?)?\b/g, '°');

/** What a short word stands for. */
interface Meaning {
  /** How the end form begins, as a key (see endFormKey). */
  readonly form: string;
  /** Series of the 24° cone: L (light) or S (heavy). */
  readonly series?: 'l' | 's';
}

const LIGHT: Meaning = { form: '24° cone', series: 'l' };
const HEAVY: Meaning = { form: '24° cone', series: 's' };
const FLARE: Meaning = { form: '37° flare' };

/** Short words of the connection standards (ISO 8434-1, -2, -3, -6 and ISO 6162), as the trade says them: common practice. */
const SHORT_WORDS: ReadonlyMap<string, Meaning> = new Map<string, Meaning>([
  ['jic', FLARE],
  ['37° flare', FLARE],
  ['orfs', { form: 'o-ring face seal' }],
  ['bsp', { form: '60° cone' }],
  ['dkol', LIGHT],
  ['24° cone light', LIGHT],
  ['dkos', HEAVY],
  ['24° cone heavy', HEAVY],
  ['sae flange', { form: 'split flange' }],
]);

const seriesKey = (series: string | undefined) => {
  const key = partKey(series ?? '');
  return key === 'light' ? 'l' : key === 'heavy' ? 's' : key;
};

/** Whether an end form is what was asked for: in the catalogue's own words, with the series behind them, or by a short word. */
export function isEndForm(endForm: string, series: string | undefined, wanted: string): boolean {
  const form = endFormKey(endForm);
  const asked = endFormKey(wanted);
  if (form === asked || (series !== undefined && `${form} ${endFormKey(series)}` === asked)) return true;
  const meaning = SHORT_WORDS.get(asked);
  if (!meaning || !form.startsWith(meaning.form)) return false;
  // Some catalogues write the series into the end form: `24° cone S`.
  return meaning.series === undefined || [seriesKey(series), form.slice(meaning.form.length).trim()].includes(meaning.series);
}

/** The short words by which people ask for an end form: `orfs`, `dkos`. */
export function shortWordsOf(endForm: string, series: string | undefined): readonly string[] {
  return [...SHORT_WORDS.keys()].filter(word => isEndForm(endForm, series, word));
}
