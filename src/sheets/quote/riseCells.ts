import { blockAddress, fixedReference } from '../../workbook/a1';

/** Rises of prices as fractions. */
export interface Rises {
  readonly families: readonly { readonly family: string; readonly rise: number }[];
  readonly fittings: number;
  readonly guards: number;
}

/** First row of the rises. */
export const FIRST_RISE = 6;

/** Where the rises stand. */
export class RiseCells {
  constructor(private readonly families: number) {}

  get fittingsRow(): number {
    return FIRST_RISE + this.families;
  }

  /** First row below the rises. */
  get end(): number {
    return this.fittingsRow + 2;
  }

  /** The rise of a hose, without `=`, from other sheets: by its family. */
  ofHose(sheet: string, family: string | undefined): string {
    const cells = (column: number) =>
      fixedReference({ sheet, address: blockAddress(FIRST_RISE, column, Math.max(1, this.families), 1) });
    return family === undefined ? '0' : `SUMPRODUCT((${cells(0)}=${family})*${cells(2)})`;
  }

  ofOthers(sheet: string, name: 'fittings' | 'guards'): string {
    const row = this.fittingsRow + (name === 'guards' ? 1 : 0);
    return fixedReference({ sheet, address: blockAddress(row, 2, 1, 1) });
  }
}
