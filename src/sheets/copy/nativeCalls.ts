import { cellAddress } from '../../workbook/a1';
import { functionCalls, type FunctionCall } from '../../workbook/functionCall';
import type { CallReader } from './callArguments';
import type { WorkbookCell } from './workbookCell';
import type { CopySource } from './copySource';
import { finishedFormula, type CopyScope } from './finishedFormula';
import { NATIVE_FUNCTIONS } from './native/nativeFunctions';
import type { NativeContext, NativeFunction } from './native/nativeFunction';
import { NotNative } from './notNative';
import type { CopiedParts } from './parts/copiedParts';

/** A row of a result: its formulas without `=`, or why there are none. */
export interface NativeRow {
  readonly first: WorkbookCell;
  readonly formulas: readonly (string | NotNative)[] | NotNative;
}

/** A value taken out of a function's result: `INDEX(call,1,4)`, or the call itself where it gives one value. */
const INDEX_BEFORE = /INDEX\(\s*$/i;
const INDEX_BEHIND = /^\s*,\s*(?:1\s*,\s*)?(\d+)\s*\)/;

function orNotNative<T>(work: () => T): T | NotNative {
  try {
    return work();
  } catch (error) {
    if (error instanceof NotNative) return error;
    throw error;
  }
}

/** Says calls of our functions in functions that every spreadsheet program has. */
export class NativeCalls {
  constructor(
    private readonly source: CopySource,
    private readonly reader: CallReader,
    private readonly parts: CopiedParts | NotNative,
    private readonly scope: CopyScope,
  ) {}

  /** With the parts data for a call that looks something up in the catalogue of the copy. */
  private context({ arguments: [handle] }: FunctionCall, cell?: NativeContext['cell']): NativeContext {
    const { catalogue } = this.source;
    if (handle?.kind !== 'reference' || !catalogue) return { parts: undefined, cell };
    const { sheet, address } = catalogue.cell;
    if (handle.address !== address || (handle.sheet ?? sheet) !== sheet) return { parts: undefined, cell };
    if (this.parts instanceof NotNative) throw this.parts;
    return { parts: this.parts, cell };
  }

  /**
   * The rows that a call fills from its cell on.
   * @param columns of its result that stand side by side there; the first is 1
   * @throws NotNative where its arguments cannot be told
   */
  rows(call: FunctionCall, native: NativeFunction, place: WorkbookCell, columns: readonly number[]): readonly NativeRow[] {
    const { height, row } = this.reader.arguments(call, native.arguments, place);
    return Array.from({ length: height }, (_, down) => {
      const first = { ...place, row: place.row + down };
      const cell = (across: number) => {
        const at = columns.indexOf(across + 1);
        return at < 0 ? undefined : cellAddress({ ...first, column: first.column + at });
      };
      const chosen = () => {
        const all = native.row(row(down), this.context(call, cell));
        return columns.map(column => all[column - 1]!);
      };
      return { first, formulas: orNotNative(chosen) };
    });
  }

  private valueOf(call: FunctionCall, native: NativeFunction, place: WorkbookCell, column: number | undefined): string {
    const { height, row } = this.reader.arguments(call, native.arguments, place);
    if (height > 1) throw new NotNative('it works on whole columns');
    if (column === undefined && native.width > 1) throw new NotNative('it takes one value out of several');
    const result = native.row(row(0), this.context(call))[column ?? 0];
    if (result === undefined) throw new NotNative('it takes a value that the function does not give');
    if (result instanceof NotNative) throw result;
    return result;
  }

  /**
   * A formula of the workbook as the copy has it, the calls in it replaced, each of which gives it one value.
   * @throws NotNative
   */
  within(formula: string, place: WorkbookCell): string {
    const values: string[] = [];
    let changed = formula;
    for (const call of [...functionCalls(formula)].reverse()) {
      const native = NATIVE_FUNCTIONS[call.id];
      if (!native) throw new NotNative('functions that every program has cannot express it');
      const [before, behind] = [changed.slice(0, call.from), changed.slice(call.to)];
      const index = INDEX_BEFORE.test(before) ? INDEX_BEHIND.exec(behind) : null;
      const value = this.valueOf(call, native, place, index ? Number(index[1]) - 1 : undefined);
      const head = index ? before.replace(INDEX_BEFORE, '') : before;
      // What is finished already stands aside as a text while the rest of the formula is made ready.
      changed = `${head}"${MARK}${values.push(value) - 1}${MARK}"${index ? behind.slice(index[0].length) : behind}`;
    }
    return finishedFormula(changed, place, this.scope).replace(MARKED, (_, at: string) => `(${values[Number(at)]!})`);
  }
}

/** A sign that stands in no formula. */
const MARK = '\u0001';
const MARKED = new RegExp(`"${MARK}(\\d+)${MARK}"`, 'g');

/** What a cell shows in the copy where its formula is one value of a call: the function's text, or that of the plain formula. */
export function shownWithin(formula: string, text: string): string {
  const [call, ...others] = functionCalls(formula);
  const native = call && NATIVE_FUNCTIONS[call.id];
  if (!call || !native?.shown || others.length > 0) return text;
  const index = INDEX_BEHIND.exec(formula.slice(call.to));
  const isWhole =
    /^=\s*@?\s*INDEX\(\s*$/i.test(formula.slice(0, call.from)) && index && formula.length === call.to + index[0].length;
  return isWhole ? native.shown(text, Number(index[1]) - 1) : text;
}
