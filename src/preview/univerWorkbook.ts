import type { Univer } from '@univerjs/core';
import type { FUniver } from '@univerjs/core/facade';
import type { FWorkbook, FWorksheet } from '@univerjs/sheets/facade';
import { changedMeanwhile, firstUnexpected, sheetsToWrite } from '../workbook/expectedCells';
import { RefusedWriting } from '../workbook/refusedWriting';
import type { Change, Expected, HostTable, RangeAddress, RangeContent, SheetLayout, Workbook } from '../workbook/workbook';
import { CellSource } from './host/cellSource';
import { onContent } from './host/onContent';
import { applyChanges } from './host/applyChanges';
import { layoutOf } from './host/layoutOf';
import { recallFrom, rememberIn } from './host/remembered';
import { scrollTo } from './host/scrollTo';
import { cellBlockAddress, cellBlockOf, type CellBlock } from './xlsx/address';
import { callsOursAsTyped } from './xlsx/storedFormula';

/** The block of an address, whole columns and rows included. */
function requestedBlock({ sheet, address }: RangeAddress): CellBlock {
  const block = cellBlockOf(address);
  if (!block) throw new Error(`"${address}" on sheet ${sheet} is no range`);
  return block;
}

/** The part of a block that lies in the used one; at least its first cell. */
function clipped(block: CellBlock, used: CellBlock | undefined): CellBlock {
  return {
    ...block,
    endRow: Math.max(block.startRow, Math.min(block.endRow, used?.endRow ?? 0)),
    endColumn: Math.max(block.startColumn, Math.min(block.endColumn, used?.endColumn ?? 0)),
  };
}

/** The Workbook port over the workbook that is open on the try-out page. */
export class UniverWorkbook implements Workbook {
  readonly host = 'try-out' as const;

  constructor(
    private readonly univer: Univer,
    private readonly api: FUniver,
  ) {}

  private get workbook(): FWorkbook {
    const workbook = this.api.getActiveWorkbook();
    if (!workbook) throw new Error('no workbook is open');
    return workbook;
  }

  private sheet(name: string): FWorksheet {
    const sheet = this.workbook.getSheetByName(name);
    if (!sheet) throw new Error(`there is no sheet ${name}`);
    return sheet;
  }

  private source(sheet: FWorksheet): CellSource {
    return new CellSource(this.univer, this.workbook.getWorkbook(), sheet.getSheet());
  }

  private content(sheet: FWorksheet, block: CellBlock): RangeContent {
    const source = this.source(sheet);
    return source.content(clipped(block, source.used()));
  }

  async sheets(): Promise<readonly string[]> {
    return this.workbook.getSheets().map(sheet => sheet.getSheetName());
  }

  async selection(): Promise<RangeContent> {
    const sheet = this.workbook.getActiveSheet();
    const range = sheet.getActiveRange()?.getRange() ?? { startRow: 0, startColumn: 0, endRow: 0, endColumn: 0 };
    const whole = (start: number, last: number) => (Number.isNaN(start) ? 0 : Number.isNaN(last) ? start : last);
    return this.content(sheet, {
      startRow: Number.isNaN(range.startRow) ? 0 : range.startRow,
      startColumn: Number.isNaN(range.startColumn) ? 0 : range.startColumn,
      endRow: Number.isNaN(range.endRow) ? sheet.getMaxRows() - 1 : whole(range.startRow, range.endRow),
      endColumn: Number.isNaN(range.endColumn) ? sheet.getMaxColumns() - 1 : whole(range.startColumn, range.endColumn),
    });
  }

  onSelection(listener: () => void): () => void {
    return onContent(this.api, listener);
  }

  async read(ranges: readonly RangeAddress[]): Promise<readonly RangeContent[]> {
    return ranges.map(range => this.content(this.sheet(range.sheet), requestedBlock(range)));
  }

  async used(sheet: string): Promise<RangeContent | undefined> {
    const source = this.source(this.sheet(sheet));
    const block = source.used();
    return block && source.content(block);
  }

  async tables(sheet: string): Promise<readonly HostTable[]> {
    this.sheet(sheet);
    return [];
  }

  async layout(sheet: string): Promise<SheetLayout> {
    const page = this.sheet(sheet);
    return layoutOf(page.getSheet(), this.source(page).used());
  }

  async spillParent({ sheet, address }: RangeAddress): Promise<RangeAddress | undefined> {
    const { startRow, startColumn } = requestedBlock({ sheet, address });
    const from = this.source(this.sheet(sheet)).filledFrom(startRow, startColumn);
    return from === undefined ? undefined : { sheet, address: from };
  }

  async names(): Promise<readonly { readonly name: string; readonly at: RangeAddress }[]> {
    return this.workbook.getDefinedNames().flatMap(defined => {
      const [, quoted, plain, range] = /^=?(?:'((?:[^']|'')+)'|([^'!]+))!([^!,]+)$/.exec(defined.getFormulaOrRefString()) ?? [];
      const block = range ? cellBlockOf(range) : undefined;
      if (!block || !defined.isWorkbookScope()) return [];
      return [
        { name: defined.getName(), at: { sheet: quoted?.replace(/''/g, "'") ?? plain!, address: cellBlockAddress(block) } },
      ];
    });
  }

  async write(changes: readonly Change[], expected?: Expected): Promise<void> {
    const changed = expected && firstUnexpected(changes, expected, await sheetsToWrite(this, changes));
    if (changed) throw new RefusedWriting(changedMeanwhile(changed), 'Nothing was written.');
    applyChanges(this.univer, this.workbook, changes);
  }

  async recall(key: string): Promise<string | undefined> {
    return recallFrom(this.workbook.getWorkbook(), key);
  }

  async remember(key: string, text: string | undefined): Promise<void> {
    rememberIn(this.workbook.getWorkbook(), key, text);
  }

  async select(at: RangeAddress): Promise<void> {
    const sheet = this.sheet(at.sheet);
    const block = clipped(requestedBlock(at), {
      startRow: 0,
      startColumn: 0,
      endRow: sheet.getMaxRows() - 1,
      endColumn: sheet.getMaxColumns() - 1,
    });
    this.workbook.setActiveSheet(sheet);
    const { startRow, startColumn, endRow, endColumn } = block;
    sheet.getRange(startRow, startColumn, endRow - startRow + 1, endColumn - startColumn + 1).activate();
    // Only the page can scroll; without a page there is nothing to show.
    if ('scrollToCell' in sheet) await scrollTo(this.univer, sheet, block);
  }

  async reenterUnknownNames(): Promise<number> {
    const changes = this.workbook.getSheets().flatMap(sheet => {
      const source = this.source(sheet);
      const block = source.used();
      if (!block) return [];
      const { values, formulas } = source.content(block);
      return formulas.flatMap((row, rowIndex) =>
        row.flatMap((formula, columnIndex) => {
          const value = values[rowIndex]![columnIndex]!;
          if (!callsOursAsTyped(formula) || typeof value !== 'object' || value.error !== '#NAME?') return [];
          const cell = { startRow: block.startRow + rowIndex, startColumn: block.startColumn + columnIndex };
          const address = cellBlockAddress({ ...cell, endRow: cell.startRow, endColumn: cell.startColumn });
          return [{ kind: 'formulas' as const, at: { sheet: sheet.getSheetName(), address }, formulas: [[formula]] }];
        }),
      );
    });
    applyChanges(this.univer, this.workbook, changes);
    return changes.length;
  }
}
