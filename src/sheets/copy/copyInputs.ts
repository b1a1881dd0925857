import type { Decimal } from '../../core/units/decimal';
import type { CopiedCell } from '../../workbook/copiedWorkbook';
import type { CellValue } from '../../workbook/workbook';
import { type WorkbookCell, placeKey } from './workbookCell';
import type { CopySource } from './copySource';
import { NotNative } from './notNative';
import { cellAddress } from '../../workbook/a1';

/** Blanks that other programs do not take off a name, or that they fold. */
const ODD_BLANKS = /[^\S ]| {2,}/;

/**
 * Cells that plain formulas read, as the copy must have them: our functions read numbers that stand as text, and names with blanks around
 * them; other programs do not.
 */
export class CopyInputs {
  private readonly cells = new Map<string, CopiedCell>();

  constructor(private readonly source: CopySource) {}

  private formulaOf({ sheet, row, column }: WorkbookCell): string {
    return this.source.sheets.get(sheet)?.cells.formula(row, column) ?? '';
  }

  private formatOf({ sheet, row, column }: WorkbookCell): string {
    const format = this.source.sheets.get(sheet)?.cells.format(row, column) || 'General';
    return format === '@' ? 'General' : format;
  }

  /** A text where a number is due; one that is none stays, and gives #N/A. */
  number(place: WorkbookCell, text: string, value: Decimal | undefined): CellValue {
    if (text.trim() === '') {
      if (this.formulaOf(place) === '') this.cells.set(placeKey(place), { value: '', format: this.formatOf(place) });
      return '';
    }
    if (!value) return text;
    if (this.formulaOf(place) !== '') throw new NotNative(`${cellAddress(place)} is a formula that gives its number as text`);
    this.cells.set(placeKey(place), { value: value.toNumber(), format: this.formatOf(place) });
    return value.toNumber();
  }

  /** A name of a part. */
  name(place: WorkbookCell, text: string): CellValue {
    const name = text.trim().normalize('NFC');
    if (ODD_BLANKS.test(name)) throw new NotNative(`the name in ${cellAddress(place)} has several blanks side by side`);
    if (name === text) return text;
    if (this.formulaOf(place) !== '') {
      if (name === text.replace(/^ +| +$/g, '')) return text;
      throw new NotNative(`${cellAddress(place)} is a formula whose text other programs read differently`);
    }
    this.cells.set(placeKey(place), { value: name, format: this.formatOf(place) });
    return name;
  }

  /** The cell as the copy must have it; undefined where it stays as it is. */
  cell(place: WorkbookCell): CopiedCell | undefined {
    return this.cells.get(placeKey(place));
  }
}
