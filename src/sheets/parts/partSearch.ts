import type { Catalogue } from '../../core/catalogue/catalogue';
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

/** A text in which words begin behind a blank; words with signs in them come a second time in pieces: `o-ring o ring`. */
function searchable(text: string): string {
  const low = ` ${plain(text)}`;
  const signed = low.split(' ').filter(word => /[^\p{L}\p{N}.]/u.test(word));
  return signed.length === 0 ? low : `${low} ${signed.join(' ').replace(/[^\p{L}\p{N}.]+/gu, ' ')}`;
}

function hasAll(text: string, starts: readonly string[]): boolean {
  for (const start of starts) if (!text.includes(start)) return false;
  return true;
}

const angleWord = (angle: number | undefined) => (angle === undefined ? '' : angle === 0 ? 'straight 0°' : `${angle}°`);

function entryOf(part: Part): Entry {
  const { row } = part;
  const texts =
    part.kind === 'hose'
      ? [part.row.standard, part.row.fluids, part.row.cover, part.row.note]
      : [part.row.endForm, part.row.thread, part.row.series, angleWord(part.row.angle)];
  const all = [part.name, row.family, row.size, part.kind, ...texts].filter(text => text !== undefined).join(' ');
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
export function partSearch({ hoses, fittings }: Pick<Catalogue, 'hoses' | 'fittings'>): PartSearch {
  const parts: readonly Part[] = [
    ...hoses.map((row): Part => ({ kind: 'hose', name: row.hose, row })),
    ...fittings.map((row): Part => ({ kind: 'fitting', name: row.fitting, row })),
  ];
  const entries = parts.map(entryOf);
  return {
    parts,
    sizes: distinct(entries.map(({ size }) => size)),
    endForms: distinct(entries.map(({ endForm }) => endForm)),
    find({ words, kind, size, endForm }) {
      const starts = plain(words)
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
