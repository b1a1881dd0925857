import { blockAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';
import { FINDING_TITLES, type CatalogueFinding } from './catalogueFindings';
import { findingGroups } from './findingGroups';

const HEADINGS = ['Done', 'Finding', 'Sheet', 'Cells', 'Part', 'What'];
const FIRST = 4;

/**
 * A new sheet with all findings, to be worked through; those with one cause have one row.
 * @param sheet a name that is not taken
 * @param handle the catalogue that was checked
 * @param today as `2026-10-05`
 */
export function checksSheet(
  sheet: string,
  findings: readonly CatalogueFinding[],
  handle: string,
  today: string,
): readonly Change[] {
  const rows = findingGroups(findings).map(({ kind, part, sentence, cells, findings: { length } }) => {
    const addresses = cells.map(({ at }) => at.address).join(', ');
    const name = length === 1 ? part : `${part}, ${length} rows`;
    return ['☐', FINDING_TITLES[kind], cells[0]!.at.sheet, addresses, name, sentence];
  });
  return new SheetWriter(sheet)
    .values(0, 0, [['Catalogue checks'], [`${handle}, checked ${today}`]])
    .style(0, 0, 1, 1, { bold: true, fontSize: 16 })
    .values(FIRST - 1, 0, [HEADINGS, ...rows])
    .style(FIRST - 1, 0, 1, HEADINGS.length, { bold: true, fill: HEAD_FILL })
    .style(FIRST - 1, 0, rows.length + 1, HEADINGS.length, { border: 'all' })
    .style(FIRST, 3, rows.length, 3, { wrap: true })
    .widths(36, 130, 70, 80, 190, 300)
    .page({
      orientation: 'landscape',
      printArea: blockAddress(0, 0, FIRST + rows.length, HEADINGS.length),
      titleRows: `${FIRST}:${FIRST}`,
      fitWidth: true,
    })
    .done();
}
