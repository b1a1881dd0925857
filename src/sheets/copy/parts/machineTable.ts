import type { Catalogue } from '../../../core/catalogue/catalogue';
import { catalogueDialsHold } from '../../../core/catalogue/catalogueDials';
import { partKey } from '../../../core/catalogue/partName';
import { TradeError } from '../../../core/tradeError';
import type { CopiedCell } from '../../../workbook/copiedWorkbook';
import { NotNative } from '../notNative';
import { neutralName } from './names';
import type { PartsTable } from './partsTable';

type Row = PartsTable['goodRows'][number];
type RowOf = (text: string, keys: string) => string;

const ofRow = (row: Row, field: string) => (row.values[field] === undefined ? '' : String(row.values[field]));
const isRecord = (row: Row) => ofRow(row, 'hose') !== '' || ofRow(row, 'fitting') !== '';

/** The table Machines with the columns that look-ups need: Key, No and NewestKey of its records, and which machines the dials of Crimps are for. */
export class MachineTable {
  private described: { readonly names: string; readonly holds: string } | undefined;
  private newestKeys: string | undefined;

  constructor(
    private readonly catalogue: Catalogue,
    private readonly table: PartsTable,
    private readonly separator: string,
    private readonly rowOf: RowOf,
  ) {}

  /** Records that a plain search cannot weigh: left out for a problem, or of a pattern of fittings. */
  private requireSearchable(): void {
    const { settings, settingPatterns } = this.catalogue.index;
    if (settingPatterns.length > 0) throw new NotNative('Machines has records of patterns of fittings');
    if ([...settings.values()].flat().some(({ entry }) => entry.problem))
      throw new NotNative('Machines has records that were left out');
  }

  private keyOf(row: Row): string {
    return ['machine', 'die', 'hose', 'fitting']
      .map(field => ofRow(row, field))
      .join(this.separator)
      .normalize('NFC');
  }

  /** The first row of each machine says whether the dials of Crimps are for it. */
  private describe(): { names: string; holds: string } {
    const known = new Set<string>();
    const first = this.table.goodRows.filter(row => {
      const key = partKey(ofRow(row, 'machine'));
      return !known.has(key) && known.add(key);
    });
    const text = (row: Row, value: string): { row: number; cell: CopiedCell } => ({
      row: row.row,
      cell: { value, format: 'General' },
    });
    const holds = (row: Row): CopiedCell => {
      try {
        return { value: catalogueDialsHold(this.catalogue, ofRow(row, 'machine')) ? 'yes' : 'no', format: 'General' };
      } catch (error) {
        if (error instanceof TradeError) return { value: { error: '#N/A' }, format: 'General' };
        throw error;
      }
    };
    return {
      names: this.table.helper(
        'Machine, once',
        first.map(row => text(row, neutralName(ofRow(row, 'machine').normalize('NFC')))),
      ),
      holds: this.table.helper(
        'Dials of Crimps',
        first.map(row => ({ row: row.row, cell: holds(row) })),
      ),
    };
  }

  /** NewestKey: the key in the newest record of each, of one date the lower row. */
  private newest(): string {
    const records = this.table.goodRows.filter(isRecord);
    const date = this.table.field('date');
    const keys = this.table.helper(
      'Key',
      records.map(row => ({ row: row.row, cell: { value: this.keyOf(row), format: 'General' } })),
    );
    const numbers = this.table.helper(
      'No',
      records.map((row, index) => ({ row: row.row, cell: { value: index + 1, format: 'General' } })),
    );
    return this.table.helper(
      'NewestKey',
      records.map((row, index) => {
        const isLater = (other: Row, at: number) => {
          const [a, b] = [Number(other.values.date ?? 0), Number(row.values.date ?? 0)];
          return partKey(this.keyOf(other)) === partKey(this.keyOf(row)) && (a > b || (a === b && at > index));
        };
        const value = records.some(isLater) ? '' : this.keyOf(row);
        const cell = (range: string) => `${/\$([A-Z]+)\$/.exec(range)![1]}${row.row + 1}`;
        const later = date
          ? `((${date}>${cell(date)})+(${date}=${cell(date)})*(${numbers}>${cell(numbers)}))`
          : `(${numbers}>${cell(numbers)})`;
        const formula = `=IF(SUMPRODUCT((${keys}=${cell(keys)})*${later})=0,${cell(keys)},"")`;
        return { row: row.row, cell: { value, format: 'General', formula } };
      }),
    );
  }

  private machines() {
    return (this.described ??= this.describe());
  }

  /** True in a formula where a machine is not known. */
  unknown(machine: string): string {
    return `ISNA(${this.rowOf(machine, this.machines().names)})`;
  }

  /** `yes` where the dials of Crimps are for a machine. */
  dialsHold(machine: string): string {
    const { names, holds } = this.machines();
    return `INDEX(${holds},${this.rowOf(machine, names)})`;
  }

  /** Place of a machine's newest record for a die and a pair; an error where it has none. */
  record(machine: string, die: string, hose: string, fitting: string): string {
    const key = [machine, die, hose, fitting].join(`&"${this.separator}"&`);
    this.requireSearchable();
    return this.rowOf(key, (this.newestKeys ??= this.newest()));
  }

  /** The dial at the place of a record. */
  dialAt(row: string): string {
    const range = this.table.field('dial');
    return range ? `INDEX(${range},${row})` : 'NA()';
  }
}
