import { blockAddress, blockOf, columnLetters } from '../../workbook/a1';
import type { RangeAddress } from '../../workbook/workbook';
import type { CatalogueFinding, FindingKind } from './catalogueFindings';

/** Cells of one column that lie below each other. */
export interface FoundCells {
  /** `row 7`, `rows 2–61`. */
  readonly label: string;
  readonly at: RangeAddress;
}

/** One cause: the same sentence of one kind on one sheet, told once with all its rows. */
export interface FindingGroup {
  readonly kind: FindingKind;
  /** The part, or `Crimps row 7`; `Crimps` where it stands in several rows. */
  readonly part: string;
  readonly sentence: string;
  readonly findings: readonly CatalogueFinding[];
  /** At least one; in the order of the rows. */
  readonly cells: readonly FoundCells[];
}

/** Kinds whose findings are named by their row: those of equal text have one cause. The others are named by part, each of which is work. */
const BY_ROW: ReadonlySet<FindingKind> = new Set(['cutOff', 'leftOut', 'note']);

/** The cells as runs of rows below each other, by column. */
function foundCells(cells: readonly RangeAddress[]): readonly FoundCells[] {
  const runs: { sheet: string; column: number; first: number; last: number }[] = [];
  const places = cells.map(({ sheet, address }) => ({ sheet, ...blockOf(address)! }));
  for (const { sheet, row, column } of places.sort((a, b) => a.column - b.column || a.row - b.row)) {
    const run = runs.at(-1);
    if (run && run.column === column && row <= run.last + 1) run.last = row;
    else runs.push({ sheet, column, first: row, last: row });
  }
  return runs.map(({ sheet, column, first, last }) =>
    first === last
      ? { label: `row ${first + 1}`, at: { sheet, address: `${columnLetters(column)}${first + 1}` } }
      : { label: `rows ${first + 1}–${last + 1}`, at: { sheet, address: blockAddress(first, column, last - first + 1, 1) } },
  );
}

function groupOf(findings: readonly CatalogueFinding[]): FindingGroup {
  const { kind, part, sentence, at } = findings[0]!;
  const cells = foundCells(findings.map(each => each.at));
  return { kind, part: findings.length === 1 ? part : at.sheet, sentence, findings, cells };
}

/** Findings with one cause together, in the order in which the first of each came. */
export function findingGroups(findings: readonly CatalogueFinding[]): readonly FindingGroup[] {
  const groups = new Map<string, CatalogueFinding[]>();
  findings.forEach((finding, index) => {
    const { kind, sentence, at } = finding;
    const key = BY_ROW.has(kind) ? [kind, at.sheet, sentence].join('\u001f') : String(index);
    const group = groups.get(key);
    if (group) group.push(finding);
    else groups.set(key, [finding]);
  });
  return [...groups.values()].map(groupOf);
}
