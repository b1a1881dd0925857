import { cellAddress, columnLetters } from '../../workbook/a1';
import type { CopySource } from './copySource';
import type { CopyWishes } from './copyWishes';
import type { CellSet } from './workbookCell';

const MOST_NAMED = 12;

/** Whether a whole sheet of the workbook is hidden. */
export const isHiddenSheet = ({ sheets }: CopySource, name: string): boolean => sheets.get(name)?.cells.layout.isHidden ?? false;

/** What is said beside a sheet's name: why it may not be for everybody. */
export function sheetRemark(source: CopySource, name: string): string {
  const words = [source.parts.get(name)?.why ?? '', isHiddenSheet(source, name) ? 'hidden' : ''];
  return words.filter(word => word !== '').join(', ');
}

/** Left-out cells, as their headings and labels name them. */
function privateSentence(source: CopySource, chosen: readonly string[], cells: CellSet): string[] {
  const words = new Map<string, string>();
  for (const place of cells.all()) {
    if (!chosen.includes(place.sheet)) continue;
    const sheet = source.sheets.get(place.sheet)!.cells;
    const value = sheet.value(place.row, place.column);
    const column = `${place.sheet} ${place.column}`;
    if (typeof value === 'string' && value !== '' && !sheet.isComputed(place.row, place.column) && !words.has(column)) {
      words.set(column, `${place.sheet}!${cellAddress(place)} (${value})`);
    }
  }
  if (words.size === 0) return [];
  const named = [...words.values()];
  const more = named.length > MOST_NAMED ? `, and ${named.length - MOST_NAMED} more` : '';
  return [`Costs and margins: ${named.slice(0, MOST_NAMED).join(', ')}${more}. Look the copy through before you pass it on.`];
}

/** Hidden rows of the copied sheets, counted: `Jobs (2)`. */
function hiddenRows({ sheets }: CopySource, chosen: readonly string[]): string[] {
  return chosen.flatMap(name => {
    const rows = sheets.get(name)!.cells.layout.hiddenRows.size;
    return rows > 0 ? [`${name} (${rows})`] : [];
  });
}

/** Hidden columns of the copied sheets, by their letters: `Jobs (C, I)`. */
function hiddenColumns({ sheets }: CopySource, chosen: readonly string[]): string[] {
  return chosen.flatMap(name => {
    const columns = [...sheets.get(name)!.cells.layout.hiddenColumns].map(columnLetters);
    return columns.length > 0 ? [`${name} (${columns.join(', ')})`] : [];
  });
}

const listed = (words: string, names: readonly string[]) => (names.length > 0 ? [`${words} ${names.join(', ')}`] : []);

/** The sheets that hold something and are not in the copy, with why where it is not only that nobody ticked them. */
function sheetsSentence(source: CopySource, chosen: readonly string[]): string[] {
  const others = source.names.filter(name => source.sheets.has(name) && !chosen.includes(name));
  const named = others.map(name => {
    const remark = sheetRemark(source, name);
    return remark === '' ? name : `${name} (${remark})`;
  });
  return listed('Sheets:', named).map(words => `${words}.`);
}

/** What a copy leaves out: cells, contents of hidden rows and columns, whole sheets. */
export function leftOutOfCopy(
  source: CopySource,
  chosen: readonly string[],
  { cells, withoutHidden }: { readonly cells: CellSet; readonly withoutHidden: boolean },
): string[] {
  const contents = [
    ...listed('Contents of hidden rows:', hiddenRows(source, chosen)),
    ...listed('Contents of hidden columns:', hiddenColumns(source, chosen)),
  ];
  return [
    ...privateSentence(source, chosen, cells),
    ...(withoutHidden ? contents.map(words => `${words}.`) : []),
    ...sheetsSentence(source, chosen),
  ];
}

/** What is hidden in the workbook and came with the copy: a file keeps it hidden, new sheets show it. */
export function hiddenSentences(source: CopySource, chosen: readonly string[], { kind, target }: CopyWishes): string[] {
  const sheets = chosen.filter(name => isHiddenSheet(source, name));
  const parts = [
    ...listed(sheets.length > 1 ? 'sheets' : 'sheet', sheets),
    ...(kind === 'values' ? [] : listed('rows of', hiddenRows(source, chosen))),
    ...(kind === 'values' ? [] : listed('columns of', hiddenColumns(source, chosen))),
  ];
  if (parts.length === 0) return [];
  const what = parts.join('; ');
  return [
    target === 'file' ? `Copied and still hidden: ${what}.` : `Hidden in the workbook, visible in the new sheets: ${what}.`,
  ];
}
