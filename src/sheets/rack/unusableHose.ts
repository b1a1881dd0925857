import { hoseKey } from '../jobs/cutLine';
import { LEFT_OUT_WORDS, type LeftOutRow } from '../table/tableRows';
import { rowsText } from '../table/rowsText';
import type { Rack } from './rack';

function reasonOf({ reason, sentence }: LeftOutRow): string | undefined {
  if (reason === 'barred') return `with ${sentence ?? LEFT_OUT_WORDS.barred}`;
  return reason === 'problem' || reason === 'hidden' || reason === 'below' ? LEFT_OUT_WORDS[reason] : undefined;
}

/**
 * Hose that is in the rack but may not be used, and why.
 * @param tooOld rows beyond the age limit that are left out
 * @returns for a hose `2 too old (rows 2, 3), 1 with Status: Quarantine (row 4)`; "" where there is none of it
 */
export function unusableHose(
  { report, tables }: Pick<Rack, 'report' | 'tables'>,
  tooOld: readonly { readonly hose: string; readonly row: number }[],
): (hose: string) => string {
  const hoseOf = (row: number) => {
    const isOf = ({ table: { block, below } }: Rack['tables'][number]) =>
      (row - 1 > block.row && row - 1 < block.row + block.rows) || below.includes(row - 1);
    return tables.find(isOf)?.reader.name(row - 1, 'hose') ?? '';
  };
  const found = [
    ...tooOld.map(({ hose, row }) => ({ hose: hoseKey(hose), row, why: 'too old' })),
    ...report.leftOut.flatMap(each => {
      const why = reasonOf(each);
      return why === undefined ? [] : [{ hose: hoseKey(hoseOf(each.row)), row: each.row, why }];
    }),
  ];
  return hose => {
    const rows = new Map<string, number[]>();
    for (const each of found.filter(one => one.hose === hoseKey(hose)))
      rows.set(each.why, [...(rows.get(each.why) ?? []), each.row]);
    return [...rows].map(([why, of]) => `${of.length} ${why} (${rowsText(of)})`).join(', ');
  };
}
