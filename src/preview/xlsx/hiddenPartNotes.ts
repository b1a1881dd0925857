import { unzipSync } from 'fflate';

/** What a file may hold that the page neither shows nor saves, by where it stands in the package (ECMA-376, part 1). */
const PARTS: readonly (readonly [RegExp, one: string, many: string])[] = [
  [/^xl\/charts\/chart[^/]*\.xml$/i, '1 chart', 'charts'],
  [/^xl\/chartsheets\/[^/]*\.xml$/i, '1 chart sheet', 'chart sheets'],
  [/^xl\/tables\/[^/]*\.xml$/i, '1 Excel table', 'Excel tables'],
  [/^xl\/pivotTables\/[^/]*\.xml$/i, '1 pivot table', 'pivot tables'],
  [/^xl\/media\/[^/]+$/i, '1 picture', 'pictures'],
  [/^xl\/(threadedComments\/[^/]*|comments[^/]*)\.xml$/i, 'the notes or comments of a sheet', 'sheets with notes or comments'],
  [/^xl\/externalLinks\/[^/]*\.xml$/i, '1 link to another workbook', 'links to other workbooks'],
  [/^xl\/vbaProject\.bin$/i, 'its macros', 'macro projects'],
];

/** Names of the parts of a package, without unpacking any. */
function partNames(bytes: Uint8Array): string[] {
  const names: string[] = [];
  unzipSync(bytes, {
    filter: ({ name }) => {
      names.push(name);
      return false;
    },
  });
  return names;
}

/** `a, b and c`. */
export const listed = (words: readonly string[]) =>
  words.length < 2 ? words.join() : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;

/**
 * What the person who opens a file should know of parts that the page does not show.
 * @param bytes the file
 * @param undrawn rules of conditional formats that the page does not draw
 * @returns sentences, none where everything shows
 */
export function hiddenPartNotes(bytes: Uint8Array, undrawn: number): string[] {
  const names = partNames(bytes);
  const lost = PARTS.flatMap(([pattern, one, many]) => {
    const count = names.filter(name => pattern.test(name)).length;
    return count === 0 ? [] : [count === 1 ? one : `${count} ${many}`];
  });
  return [
    ...(lost.length > 0 ? [`Not shown here, and lost in a file saved from here: ${listed(lost)}. Keep the original.`] : []),
    ...(undrawn > 0
      ? [`Conditional formats of a kind that is not drawn here are kept for the file: ${undrawn}, such as icon sets.`]
      : []),
  ];
}
