import type { Block } from '../../workbook/a1';
import type { CellValue } from '../../workbook/workbook';
import type { CopiedCell, CopiedSheet } from '../../workbook/copiedWorkbook';
import { functionCalls } from '../../workbook/functionCall';
import { spilledResult, type SpilledResult } from '../../workbook/spilledResult';
import { CallReader } from './callArguments';
import { readRatingFormula } from '../catalogue/ratingDecimals';
import { placeKey, type WorkbookCell } from './workbookCell';
import { valueForCopy } from './copiedCell';
import { widthsOf } from './copiedSheet';
import { CopyInputs } from './copyInputs';
import { eachFilledCell, type CopySource } from './copySource';
import { withoutNames } from './definedNames';
import type { CopyScope } from './finishedFormula';
import { keptGroups, type Kept } from './keptGroups';
import { NATIVE_FUNCTIONS } from './native/nativeFunctions';
import type { NativeFunction } from './native/nativeFunction';
import { NotNative } from './notNative';
import { NativeCalls, shownWithin } from './nativeCalls';
import { AddedCells } from './parts/addedCells';
import { CopiedParts } from './parts/copiedParts';
import { pairsInUse } from './parts/pairsInUse';
import type { KeptCells } from './readFirst';
import { requireLength } from './portable';
import { withAdded } from './withAdded';

/** The formulas of a copy. */
export interface PlainFormulas {
  /** The cell of the copy, where it is not simply the value it shows. */
  cell(place: WorkbookCell): CopiedCell | undefined;
  /** The sheet with what look-ups need beside it. */
  finished(name: string, sheet: CopiedSheet): CopiedSheet;
  readonly kept: readonly KeptCells[];
}

/** A formula, and what it shows: not always what our function shows. */
interface PlainCell {
  readonly formula: string;
  readonly shown: CellValue;
}

/** A call that fills cells with its result as it is; a value taken out of one row's result is no such formula. */
function spillOf(formula: string): SpilledResult | undefined {
  const [call, ...others] = functionCalls(formula);
  const spilled = spilledResult(formula);
  if (!call || (others.length > 0 && spilled?.roundedTo === undefined)) return undefined;
  if (spilled && (call.isWhole || spilled.columns.length > 1 || spilled.rows > 1)) return spilled;
  const width = call.isWhole ? NATIVE_FUNCTIONS[call.id]?.width : undefined;
  return width ? { call, columns: Array.from({ length: width }, (_, i) => i + 1), rows: 1 } : undefined;
}

class PlainCopy implements PlainFormulas {
  private readonly formulas = new Map<string, PlainCell>();
  private readonly keptCells: Kept[] = [];
  private readonly keptKeys = new Set<string>();
  private readonly inputs: CopyInputs;
  private readonly added: ReadonlyMap<string, AddedCells>;
  private readonly calls: NativeCalls;

  constructor(
    private readonly source: CopySource,
    private readonly scope: CopyScope,
  ) {
    this.inputs = new CopyInputs(source);
    const reader = new CallReader(source, this.inputs, scope);
    this.added = new Map(
      [...scope.names].map(([name, inCopy]) => [name, new AddedCells(inCopy, source.sheets.get(name)!.cells)]),
    );
    this.calls = new NativeCalls(source, reader, this.findParts(reader), scope);
    for (const name of scope.names.keys()) {
      for (const place of eachFilledCell(source.sheets.get(name)!)) this.translate(place);
    }
  }

  private cells(sheet: string) {
    return this.source.sheets.get(sheet)!.cells;
  }

  private findParts(reader: CallReader): CopiedParts | NotNative {
    const { catalogue } = this.source;
    if (!catalogue?.catalogue) return new NotNative('the workbook has no parts data that can be read');
    if (catalogue.tables.some(({ at }) => !this.scope.names.has(at.sheet)))
      return new NotNative('the copy is without the parts data');
    try {
      return new CopiedParts(catalogue, this.added, pairsInUse(this.source, this.scope.names.keys(), reader));
    } catch (error) {
      if (error instanceof NotNative) return error;
      throw error;
    }
  }

  private translate(place: WorkbookCell): void {
    const formula = withoutNames(this.cells(place.sheet).formula(place.row, place.column), this.source);
    if (formula === '' || this.scope.leftOut.has(place)) return;
    const [call] = functionCalls(formula);
    const spilled = spillOf(formula);
    const native = spilled && NATIVE_FUNCTIONS[spilled.call.id];
    try {
      if (spilled && native) this.putRows(spilled, native, place);
      else
        this.put(place, this.calls.within(formula, place), value =>
          typeof value === 'string' ? shownWithin(formula, value) : value,
        );
    } catch (error) {
      if (!(error instanceof NotNative)) throw error;
      const own = { row: place.row, column: place.column, rows: spilled?.rows ?? 1, columns: spilled?.columns.length ?? 1 };
      this.keep(place, this.source.spills.get(placeKey(place)) ?? own, `${call?.id ?? 'formula'}: ${error.message}`);
    }
  }

  private putRows({ call, columns, roundedTo }: SpilledResult, native: NativeFunction, place: WorkbookCell): void {
    for (const { first, formulas } of this.calls.rows(call, native, place, columns)) {
      if (formulas instanceof NotNative) {
        const row = { row: first.row, column: first.column, rows: 1, columns: columns.length };
        this.keep(first, row, `${call.id}: ${formulas.message}`);
        continue;
      }
      const isRefused = typeof this.valueAt(first) === 'object';
      formulas.forEach((formula, across) => {
        const at = { ...first, column: first.column + across };
        try {
          if (formula instanceof NotNative) throw formula;
          this.put(at, `=${readRatingFormula(formula, roundedTo)}`, value => {
            // A call that fails as a whole fills one cell; the formulas of the row fail all of them.
            if (isRefused) return { error: '#N/A' };
            return typeof value === 'string' ? (native.shown?.(value, columns[across]! - 1) ?? value) : value;
          });
        } catch (error) {
          if (!(error instanceof NotNative)) throw error;
          this.keep(at, { row: at.row, column: at.column, rows: 1, columns: 1 }, `${call.id}: ${error.message}`);
        }
      });
    }
  }

  private valueAt({ sheet, row, column }: WorkbookCell): CellValue {
    return this.cells(sheet).value(row, column);
  }

  private put(place: WorkbookCell, formula: string, shown: (value: CellValue) => CellValue): void {
    const own = this.cells(place.sheet).formula(place.row, place.column);
    requireLength(formula);
    const value = valueForCopy(shown(this.valueAt(place)), own);
    this.formulas.set(placeKey(place), { formula, shown: value });
  }

  private keep(place: WorkbookCell, block: Block, reason: string): void {
    for (let row = block.row; row < block.row + block.rows; row += 1) {
      for (let column = block.column; column < block.column + block.columns; column += 1) {
        this.keptKeys.add(placeKey({ ...place, row, column }));
      }
    }
    this.keptCells.push({ sheet: this.scope.names.get(place.sheet)!, block, reason });
  }

  cell(place: WorkbookCell): CopiedCell | undefined {
    const cells = this.cells(place.sheet);
    const format = cells.format(place.row, place.column) || 'General';
    const value = valueForCopy(cells.value(place.row, place.column), cells.formula(place.row, place.column));
    const plain = this.formulas.get(placeKey(place));
    if (plain) return { value: plain.shown, formula: plain.formula, format: format === '@' ? 'General' : format };
    if (this.keptKeys.has(placeKey(place))) return { value, format, looks: 'kept' };
    return this.inputs.cell(place);
  }

  finished(name: string, sheet: CopiedSheet): CopiedSheet {
    const all = withAdded(sheet, this.added.get(name)!.all());
    return { ...all, widths: widthsOf(all) };
  }

  get kept(): readonly KeptCells[] {
    return keptGroups(this.keptCells);
  }
}

/** Works out the formulas of a copy: those of ours in functions that every spreadsheet program has, the others as they are where they are plain. */
export function plainFormulas(source: CopySource, scope: CopyScope): PlainFormulas {
  return new PlainCopy(source, scope);
}
