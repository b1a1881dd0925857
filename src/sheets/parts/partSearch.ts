import type { Catalogue } from '../../core/catalogue/catalogue';
import { shortWordsOf } from '../../core/catalogue/endFormWords';
import type { Fitting } from '../../core/catalogue/tables/fittingsTable';
import type { Hose } from '../../core/catalogue/tables/hosesTable';

/** A part of the catalogue. */
export type Part =
  | { readonly kind: 'hose'; readonly name: string; readonly row: Hose }
  | { readonly kind: 'fitting'; readonly name: string; readonly row: Fitting };

/** What is looked for. */
export interface PartQuery {
  readonly words: string;
  readonly kind: Part['kind'] | '';
  readonly size: string;
  readonly endForm: string;
}

/** A catalogue's parts, made ready for searching. */
export interface PartSearch {
  readonly parts: readonly Part[];
  readonly sizes: readonly string[];
  readonly endForms: readonly string[];
  /** All parts that match, best first: those whose name has all words before the others. */
  find(query: PartQuery): readonly Part[];
}

interface Entry {
  readonly part: Part;
  readonly name: string;
  readonly all: string;
  readonly size: string;
  readonly endForm: string;
}

/** Lower case without accents, so that what is typed plainly is found. */
const plain = (text: string): string =>
  /[^\u0000-\u007f]/.test(text)
    ? text
        .normalize('NFD')
        .replace(/\p{M}+/gu, '')
        .toLowerCase()
    : text.toLowerCase();

/** Mixed numbers as one word, so that `1/2` is not found in `1 1/2`; decimal commas as points. */
const numbersWhole = (text: string): string => text.replace(/(\d+)[ -]+(\d+\/\d+)/g, '$1-$2').replace(/(\d),(\d)/g, '$1.$2');

/** Sizes and threads that people write with a blank or without: `DN 12`, `G 1/2`, `M 22x1.5`. */
const SPACED = /(?<= )(dn|g|r|m) +(?=\d)/g;
const FRACTION = /^(?:\d+-)?\d+\/\d+/;

/**
 * A text in which words begin behind a blank; words with signs in them come a second time in pieces: `o-ring o ring`, but for fractions,
 * and sizes a second time as one word: `dn12`.
 */
function searchable(text: string): string {
  const low = numbersWhole(` ${plain(text)}`);
  const signed = low.split(' ').filter(word => /[^\p{L}\p{N}.]/u.test(word) && !FRACTION.test(word));
  const pieces = signed.length === 0 ? '' : ` ${signed.join(' ').replace(/[^\p{L}\p{N}.]+/gu, ' ')}`;
  const joined = [...low.matchAll(SPACED)].map(({ 1: letters, index, 0: { length } }) => {
    const [size] = low.slice(index + length).split(' ');
    return ` ${letters}${size}`;
  });
  return low + pieces + joined.join('');
}

function hasAll(text: string, starts: readonly string[]): boolean {
  for (const start of starts) if (!text.includes(start)) return false;
  return true;
}

const angleWords = (angle: number | undefined) => (angle === undefined ? '' : angle === 0 ? 'straight 0°' : `elbow ${angle}°`);

function fittingTexts({ endForm, thread, series, angle }: Fitting) {
  return [endForm, thread, series, angleWords(angle), 'coupling', ...shortWordsOf(endForm, series)];
}

function entryOf(part: Part, lengthSymbol: string): Entry {
  const { row } = part;
  const texts =
    part.kind === 'hose' ? [part.row.standard, part.row.fluids, part.row.cover, part.row.note] : fittingTexts(part.row);
  const bore = `bore ${row.bore} ${lengthSymbol}`;
  const all = [part.name, row.family, row.size, bore, part.kind, ...texts].filter(text => text !== undefined).join(' ');
  return {
    part,
    name: searchable(part.name),
    all: searchable(all),
    size: row.size ?? '',
    endForm: part.kind === 'fitting' ? part.row.endForm : '',
  };
}

const byNumber = new Intl.Collator('en', { numeric: true });
const distinct = (texts: readonly string[]) =>
  [...new Set(texts.filter(text => text !== ''))].sort((a, b) => byNumber.compare(a, b));

/** Makes a catalogue's hoses and fittings ready for searching as somebody types. */
export function partSearch({ hoses, fittings, units }: Pick<Catalogue, 'hoses' | 'fittings' | 'units'>): PartSearch {
  const parts: readonly Part[] = [
    ...hoses.map((row): Part => ({ kind: 'hose', name: row.hose, row })),
    ...fittings.map((row): Part => ({ kind: 'fitting', name: row.fitting, row })),
  ];
  const entries = parts.map(part => entryOf(part, units.length.symbol));
  return {
    parts,
    sizes: distinct(entries.map(({ size }) => size)),
    endForms: distinct(entries.map(({ endForm }) => endForm)),
    find({ words, kind, size, endForm }) {
      const starts = numbersWhole(plain(words))
        .split(/\s+/)
        .filter(Boolean)
        .map(word => ` ${word}`);
      const [named, others]: [Part[], Part[]] = [[], []];
      for (const entry of entries) {
        if (kind !== '' && entry.part.kind !== kind) continue;
        if ((size !== '' && entry.size !== size) || (endForm !== '' && entry.endForm !== endForm)) continue;
        if (!hasAll(entry.all, starts)) continue;
        (hasAll(entry.name, starts) ? named : others).push(entry.part);
      }
      return [...named, ...others];
    },
  };
}
