import { partKey } from '../../core/catalogue/partName';
import type { Problem } from '../../core/catalogue/problem';
import { catalogueTables, TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import type { RangeAddress } from '../../workbook/workbook';
import { TablePlace } from '../catalogue/tablePlace';
import type { UsableCatalogue } from '../catalogue/usableCatalogue';

/** Finds the cell of a part's field. */
export class FindingPlaces {
  private readonly tables = new Map<TableName, { place: TablePlace; rows: ReadonlyMap<string, number> }>();

  constructor(found: UsableCatalogue) {
    for (const name of TABLE_NAMES) {
      const content = found.tables[name];
      if (!content) continue;
      const place = new TablePlace(content);
      this.tables.set(name, { place, rows: place.rowsByName(Object.values(catalogueTables[name].fields)[0]!.heading) });
    }
  }

  /** The field of a part; where the table has no such column, the part's name. */
  of(table: TableName, part: string, heading: string): RangeAddress {
    const { place, rows } = this.tables.get(table)!;
    return place.cell(rows.get(partKey(part)) ?? place.headingRow, place.column(heading) ?? 0);
  }

  /** The cell of a problem or a note; the table's headings where the table as a whole is meant. */
  row({ sheet, row, column }: Pick<Problem, 'sheet' | 'row' | 'column'>): RangeAddress {
    const table = TABLE_NAMES.find(name => catalogueTables[name].sheet === sheet)!;
    const { place } = this.tables.get(table)!;
    return place.cell(row === 0 ? place.headingRow : row - 1, place.column(column) ?? 0);
  }
}
