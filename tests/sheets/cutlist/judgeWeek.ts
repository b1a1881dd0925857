import type { CellValue } from '../../../src/workbook/workbook';
import type { RandomStock, RandomWeek } from './randomWeek';

type Rows = readonly (readonly CellValue[])[];

/** What was written, as the cells of its sheets. */
export interface WrittenWeek {
  readonly cutList: Rows;
  readonly rackAfter: Rows;
  readonly pieces: Rows;
}

/** Rows under the first row that holds a heading, as objects by heading. */
function records(rows: Rows, heading: string): readonly Readonly<Record<string, CellValue>>[] {
  const top = rows.findIndex(row => row.includes(heading));
  if (top < 0) throw new Error(`no heading ${heading}`);
  const headings = rows[top]!.map(String);
  return rows
    .slice(top + 1)
    .filter(row => row.some(cell => cell !== ''))
    .map(row => Object.fromEntries(headings.map((name, column) => [name, row[column] ?? ''])));
}

/** Equal cuts of a reel for one line. */
interface Group {
  readonly line: string;
  readonly length: number;
  readonly count: number;
  readonly pieces: string;
  readonly box: CellValue;
}

/** A reel of the list with its cuts in cutting order. */
interface ListedReel {
  readonly hose: string;
  readonly place: string;
  readonly lot: string;
  readonly length: number;
  readonly groups: readonly Group[];
  readonly left: number;
  readonly restTo: string;
}

/** Tenths of a millimetre: the judge counts in whole numbers. */
const tenths = (value: number) => Math.round(value * 10);

/** `1, 2` or `1–3` behind their line, or whole numbers like `41/3-1–3`, as single numbers. */
function numbersIn(text: string, before: string): readonly string[] {
  return text.split(', ').flatMap(part => {
    const [, own, first, last] = /^(.*-)?(\d+)(?:–(\d+))?$/.exec(part) ?? [];
    if (first === undefined) return [part];
    const count = Number(last ?? first) - Number(first) + 1;
    return Array.from({ length: count }, (_, index) => `${own ?? before}${Number(first) + index}`);
  });
}

const keyOf = (hose: string, length: number, reel: string, lot: string) => [hose, tenths(length), reel, lot].join('|');

/** Counts things by key. */
class Counts {
  private readonly of = new Map<string, number>();
  add(key: string, count: number): void {
    this.of.set(key, (this.of.get(key) ?? 0) + count);
  }
  list(): readonly string[] {
    return [...this.of]
      .filter(([, count]) => count !== 0)
      .map(([key, count]) => `${key}: ${count}`)
      .sort();
  }
}

/** What the list says stands before the line in every piece's number; undefined where numbers are written in full. */
const prefixOf = (rows: Rows): string | undefined =>
  rows.flatMap(row => /^Line and No\. are the piece number: .* is piece (.*)7-2\.$/.exec(String(row[0]))?.[1] ?? [])[0];

/** The cut list reel by reel: a row has several cuts, one behind the other under headings that come again. */
function reelsOf(rows: Rows): ReadonlyMap<number, ListedReel> {
  const top = rows.findIndex(row => row.includes('Cut to (mm)'));
  if (top < 0) throw new Error('no heading Cut to (mm)');
  const headings = rows[top]!.map(String);
  const starts = headings.flatMap((heading, column) => (heading === '✓' ? [column] : []));
  const prefix = prefixOf(rows);
  const reels = new Map<number, ListedReel>();
  for (const row of rows.slice(top + 1)) {
    const cell = (heading: string, from = 0) => row[headings.indexOf(heading, from)] ?? '';
    if (cell('Hose') === '') continue;
    const groups = starts
      .filter(start => cell('Cut to (mm)', start) !== '')
      .map((start): Group => {
        const line = String(cell('Line', start));
        return {
          line,
          length: Number(cell('Cut to (mm)', start)),
          count: Number(cell('Qty', start)),
          pieces: numbersIn(String(cell('No.', start)), prefix === undefined ? '' : `${prefix}${line}-`).join(', '),
          box: cell('✓', start),
        };
      });
    const before = reels.get(Number(cell('Reel')));
    reels.set(Number(cell('Reel')), {
      hose: String(cell('Hose')),
      place: before?.place ?? String(cell('Place')),
      lot: before?.lot ?? String(cell('Lot')),
      length: before?.length ?? Number(cell('Length (mm)')),
      groups: [...(before?.groups ?? []), ...groups],
      left: Number(cell('Left (mm)')),
      restTo: String(cell('Rest to')),
    });
  }
  return reels;
}

/**
 * Judges a written week from its cells alone, in whole tenths of a millimetre and without any code of the plan: every piece is wanted and
 * none is cut twice, cuts with kerfs and squaring fit their reel, what is left is what the sheet says, ends are kept from `keep` on, the
 * rack afterwards is the rack before less the reels cut into plus the ends kept, and pieces carry the lot and reel they are cut from.
 * @returns what is wrong, in sentences; [] where nothing is
 */
export function judgeWeek(week: RandomWeek, written: WrittenWeek): readonly string[] {
  const { lines, stock, settings } = week;
  const wrong: string[] = [];
  const [kerf, squaring, keep] = [settings.kerf, settings.squaring, settings.keep].map(value =>
    value === undefined ? undefined : tenths(value.toNumber()),
  ) as [number, number | undefined, number | undefined];
  const after = new Counts();
  for (const { hose, length, quantity, reel, lot } of stock) after.add(keyOf(hose, length, reel, lot), quantity);
  const cutOf = new Map<string, number>();
  const lotOfPiece = new Map<string, string>();

  for (const [number, { hose, place, lot, length: stated, groups, left: said, restTo }] of reelsOf(written.cutList)) {
    const name = `reel ${number}`;
    const own = stock.filter((one: RandomStock) => `shelf ${one.reel}, reel ${one.reel}` === place);
    const from = own[0];
    if (own.length !== 1 || !from || from.hose !== hose || from.lot !== lot || tenths(from.length) !== tenths(stated)) {
      wrong.push(`${name}: ${hose}, ${place}, lot ${lot}, ${stated} mm is not in the rack`);
      continue;
    }
    let left = tenths(from.length) - (squaring ?? 0);
    for (const { length, count, line, pieces, box } of groups) {
      // The last piece may end flush: no kerf behind it then.
      if (left - count * tenths(length) - (count - 1) * kerf < 0) wrong.push(`${name}: the cuts do not fit`);
      left = Math.max(0, left - count * (tenths(length) + kerf));
      if (box !== '☐') wrong.push(`${name}: no box to tick for line ${line}`);
      const wanted = lines.find(each => each.line === line);
      if (!wanted || wanted.hose !== hose || tenths(wanted.length) !== tenths(length))
        wrong.push(`${name}: line ${line} wants no ${length} mm`);
      cutOf.set(line, (cutOf.get(line) ?? 0) + count);
      const numbers = pieces.split(', ');
      if (numbers.length !== count) wrong.push(`${name}: ${count} cuts, pieces ${pieces}`);
      for (const piece of numbers) {
        if (lotOfPiece.has(piece)) wrong.push(`piece ${piece} is cut twice`);
        lotOfPiece.set(piece, [hose, lot, from.reel, line, tenths(length)].join('|'));
      }
    }
    if (tenths(said) !== left) wrong.push(`${name}: left ${said} mm said, ${left / 10} mm counted`);
    const isKept = keep !== undefined && left >= keep;
    if (restTo !== (left === 0 ? '' : isKept ? 'rack' : 'scrap')) wrong.push(`${name}: ${left / 10} mm left, rest to ${restTo}`);
    after.add(keyOf(hose, from.length, from.reel, from.lot), -1);
    if (isKept) after.add(keyOf(hose, left / 10, from.reel, from.lot), 1);
  }

  for (const { line, quantity } of lines) {
    if ((cutOf.get(line) ?? 0) > quantity) wrong.push(`line ${line}: ${cutOf.get(line)} cut, ${quantity} wanted`);
  }
  const inMetres = written.rackAfter.some(row => row.includes('Length (m)'));
  const now = new Counts();
  for (const row of records(written.rackAfter, 'Pieces')) {
    const length = Number(inMetres ? row['Length (m)'] : row['Length (mm)']) * (inMetres ? 1000 : 1);
    now.add(keyOf(String(row.Hose), length, String(row.Reel), String(row.Lot)), Number(row.Pieces));
  }
  const [expected, found] = [after.list(), now.list()];
  if (expected.join('\n') !== found.join('\n'))
    wrong.push(`rack afterwards: ${found.join('; ')}; expected ${expected.join('; ')}`);

  const pieces = records(written.pieces, 'Piece');
  if (pieces.length !== lotOfPiece.size) wrong.push(`${pieces.length} pieces for ${lotOfPiece.size} cuts`);
  for (const row of pieces) {
    const said = [row.Hose, row.Lot, row.Reel, row.Line, tenths(Number(row['Cut length (mm)']))].join('|');
    if (lotOfPiece.get(String(row.Piece)) !== said)
      wrong.push(`piece ${String(row.Piece)}: ${said}, cut as ${lotOfPiece.get(String(row.Piece))}`);
    if (row.Status !== 'planned') wrong.push(`piece ${String(row.Piece)}: status ${String(row.Status)}`);
  }
  return wrong;
}
