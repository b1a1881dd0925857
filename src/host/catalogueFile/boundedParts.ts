import { strFromU8, strToU8 } from 'fflate';
import { blockOf, columnLetters, SHEET_COLUMNS, SHEET_ROWS, type Block } from '../../workbook/a1';

/** Cells that all merged blocks of a sheet, all rules for entries, or one name may cover: the library keeps an object for each of them. */
const MOST_CELLS = 200_000;
/** The library compares each merged block with all others. */
const MOST_MERGES = 3_000;
/** Rows below the last one of a sheet to which a rule for entries still reaches; in many honest files it reaches to the end of the column. */
const RULED_BELOW = 1_000;

const SHEET_PART = /xl\/worksheets\/sheet\d+[.]xml/;
const WORKBOOK_PART = /^\/?xl\/workbook[.]xml$/;

/** What had to be left out of a workbook, or shortened, so that it opens in bounded time. */
export type LeftOut = 'merged blocks' | 'rules for entries' | 'names' | 'column widths';
type Tell = (part: LeftOut) => void;

/** A start tag; what stands in quotes may hold a ">". */
const startTag = (name: string) => `<${name}(?=[\\s/>])(?:[^<>"']|"[^"<]*"|'[^'<]*')*>`;
const [MERGE, RULE, COLUMN, ROW] = ['mergeCell', 'dataValidation', 'col', 'row'].map(name => new RegExp(startTag(name), 'g'));
const NAME = new RegExp(`(${startTag('definedName')})(?:([^<]*)</definedName\\s*>)?`, 'g');
const ATTRIBUTE = /([^\s=<>"'/]+)\s*=\s*("[^"]*"|'[^']*')/g;

function attribute(tag: string, wanted: string): string {
  for (const [, name, quoted] of tag.matchAll(ATTRIBUTE)) if (name === wanted) return quoted!.slice(1, -1);
  return '';
}

const withAttribute = (tag: string, wanted: string, value: string) =>
  tag.replace(ATTRIBUTE, (whole, name: string) => (name === wanted ? `${name}="${value}"` : whole));

const cellsOf = ({ rows, columns }: Block) => rows * columns;

function withFewMerges(xml: string, tell: Tell): string {
  let [cells, merges] = [MOST_CELLS, MOST_MERGES];
  return xml.replace(MERGE!, tag => {
    const block = blockOf(attribute(tag, 'ref'));
    if (block && cellsOf(block) <= cells && merges > 0) {
      cells -= cellsOf(block);
      merges--;
      return tag;
    }
    tell('merged blocks');
    return '';
  });
}

/** A row beyond the last one loses its start, so that the part is refused as damaged. */
function withRealRows(xml: string): string {
  return xml.replace(ROW!, tag => {
    const row = attribute(tag, 'r');
    return row === '' || (/^\d{1,7}$/.test(row) && Number(row) >= 1 && Number(row) <= SHEET_ROWS) ? tag : '';
  });
}

function lastRow(xml: string): number {
  let last = 0;
  for (const [tag] of xml.matchAll(ROW!)) last = Math.max(last, Number(attribute(tag, 'r')) || last + 1);
  return last;
}

/** A block down to a row and no further; undefined where all of it stands below. */
function downTo(row: number, { row: top, rows, ...across }: Block): Block | undefined {
  return top < row ? { ...across, row: top, rows: Math.min(rows, row - top) } : undefined;
}

/** With both corners, also for one cell. */
const spelled = ({ row, column, rows, columns }: Block) =>
  `${columnLetters(column)}${row + 1}:${columnLetters(column + columns - 1)}${row + rows}`;

function withShortRules(xml: string, tell: Tell): string {
  if (!xml.includes('<dataValidation ')) return xml;
  const last = Math.min(SHEET_ROWS, lastRow(xml) + RULED_BELOW);
  let cells = MOST_CELLS;
  return xml.replace(RULE!, tag => {
    const blocks = attribute(tag, 'sqref').split(/\s+/).map(blockOf);
    const kept = blocks.flatMap(block => {
      const short = block && downTo(last, block);
      if (!short || cellsOf(short) > cells) return [];
      cells -= cellsOf(short);
      return [short];
    });
    const count = (all: readonly (Block | undefined)[]) =>
      all.reduce((sum, block) => sum + (block ? cellsOf(block) : Infinity), 0);
    if (count(kept) !== count(blocks)) tell('rules for entries');
    // The library knows no rule without a place: one of which nothing is left keeps a cell where nobody types.
    return withAttribute(tag, 'sqref', kept.map(spelled).join(' ') || `XFD${SHEET_ROWS}`);
  });
}

function withRealColumns(xml: string, tell: Tell): string {
  return xml.replace(COLUMN!, tag => {
    const [min, max] = [Number(attribute(tag, 'min')), Number(attribute(tag, 'max'))];
    if (min >= 1 && max >= min && max <= SHEET_COLUMNS) return tag;
    tell('column widths');
    return '';
  });
}

function withSmallNames(xml: string, tell: Tell): string {
  return xml.replace(NAME, (whole, tag: string, content: string | undefined) => {
    // What the program itself names, such as what is printed, is not taken apart.
    if (attribute(tag, 'name').startsWith('_xlnm.')) return whole;
    const ranges = (content ?? '').replace(/&apos;|&#39;/g, "'").replace(/'(?:[^']|'')*'!/g, '!');
    const blocks = ranges.split(',').map(range => blockOf(range.slice(range.lastIndexOf('!') + 1)));
    // The library knows names of blocks only; what it might take for one is not left to it.
    if (blocks.some(block => block === undefined)) return '';
    if (blocks.reduce((sum, block) => sum + cellsOf(block!), 0) <= MOST_CELLS) return whole;
    tell('names');
    return '';
  });
}

/**
 * A part of an .xlsx package without what makes the library that reads it count through millions of cells: merged blocks, rules for
 * entries and names over whole sheets, columns beyond the last. A file of one kilobyte can hold such things.
 * @param path where the part stands in the package
 * @param tell is told of each kind that had to be left out or shortened
 */
export function boundedPart(path: string, part: Uint8Array<ArrayBuffer>, tell: Tell): Uint8Array<ArrayBuffer> {
  if (WORKBOOK_PART.test(path)) return strToU8(withSmallNames(strFromU8(part), tell));
  if (!SHEET_PART.test(path)) return part;
  return strToU8(
    [withRealRows, withRealColumns, withFewMerges, withShortRules].reduce((xml, bound) => bound(xml, tell), strFromU8(part)),
  );
}
