import { inQuotes } from '../../workbook/inQuotes';
import { numberFromText } from '../../core/units/numberText';
import { addressOf, blockOf, type Block } from '../../workbook/a1';
import type { FunctionCall, WrittenArgument } from '../../workbook/functionCall';
import type { CellValue } from '../../workbook/workbook';
import type { WorkbookCell } from './workbookCell';
import type { CopyInputs } from './copyInputs';
import type { CopySource } from './copySource';
import { finishedFormula, referenceInCopy, type CopyScope } from './finishedFormula';
import type { ArgumentKind, NativeArgument, NativeArguments } from './native/nativeFunction';
import { NotNative } from './notNative';
import { withReferences } from './references';

/** More rows in one formula are whole columns. */
const MOST_ROWS = 20_000;

interface Area {
  readonly sheet: string;
  readonly block: Block;
  /** As written, without its sheet; and whether it is written with one. */
  readonly address: string;
  readonly isNamed: boolean;
}

/** The arguments of a call, row by row. */
export interface CallArguments {
  readonly height: number;
  row(index: number): NativeArguments;
}

/** Signs that leave nothing of a sum of cells and numbers once these are taken out. */
const ONLY_SUMS = /^[-+*/() ]*$/;

export class CallReader {
  constructor(
    private readonly source: CopySource,
    private readonly inputs: CopyInputs,
    private readonly scope: CopyScope,
  ) {}

  private areaOf(argument: WrittenArgument, ownSheet: string): Area | undefined {
    if (argument.kind === 'reference') {
      const block = blockOf(argument.address);
      if (!block) return undefined;
      const address = argument.text.slice(argument.text.lastIndexOf('!') + 1);
      return { sheet: argument.sheet ?? ownSheet, block, address, isNamed: argument.sheet !== undefined };
    }
    if (argument.kind === 'name') throw new NotNative(`the name ${argument.text} is no range of this workbook`);
    return undefined;
  }

  /** The cells of one row. */
  private part(area: Area, row: number, kind: ArgumentKind): Area {
    const { block } = area;
    if (block.rows > MOST_ROWS) throw new NotNative('the function is given whole columns');
    if (kind !== 'readings' && kind !== 'list' && block.columns > 1) {
      throw new NotNative('the function is given several columns for one value');
    }
    if (kind === 'list' || block.rows === 1) return area;
    const part = { ...block, row: block.row + row, rows: 1 };
    return { ...area, block: part, address: addressOf(part) };
  }

  private valuesOf({ sheet, block }: Area): CellValue[] {
    const cells = this.source.sheets.get(sheet)?.cells;
    return Array.from({ length: block.rows * block.columns }, (_, index) => {
      const [r, c] = [block.row + Math.floor(index / block.columns), block.column + (index % block.columns)];
      return cells?.value(r, c) ?? '';
    });
  }

  /** The cells of an argument as the copy is to have them: numbers as numbers, names without outer blanks. */
  private prepared(area: Area, kind: ArgumentKind): { values: CellValue[]; hasInchMark: boolean } {
    let hasInchMark = false;
    const { sheet, block } = area;
    const values = this.valuesOf(area).map((value, index) => {
      if (typeof value !== 'string' || value === '' || kind === 'word' || kind === 'catalogue') return value;
      const place = { sheet, row: block.row + Math.floor(index / block.columns), column: block.column + (index % block.columns) };
      if (kind === 'name') return this.inputs.name(place, value);
      const number = numberFromText(value);
      if (number?.mark === 'inch') {
        if (kind === 'plainNumber') throw new NotNative('a number has an inch or foot mark, which the function refuses');
        hasInchMark = true;
      }
      return this.inputs.number(place, value, number?.value);
    });
    return { values, hasInchMark };
  }

  private constant(cells: readonly (readonly unknown[])[], kind: ArgumentKind): NativeArgument {
    const [value] = cells[0] ?? [];
    const isOne = cells.length === 1 && cells[0]!.length === 1;
    if (!isOne || (typeof value !== 'number' && kind !== 'word') || (typeof value !== 'number' && typeof value !== 'string'))
      throw new NotNative('the formula holds its data itself');
    const text = typeof value === 'number' ? String(value) : inQuotes(value);
    return { text, isConstant: true, value, count: 1, values: [value], hasInchMark: false };
  }

  /** Sums of cells and numbers; everything else only a host can work out. */
  private sum(text: string, kind: ArgumentKind, ownSheet: string): NativeArgument {
    const rest = withReferences(text, () => '').replace(/\d+(?:\.\d+)?%?/g, '');
    const isNumber = kind === 'number' || kind === 'plainNumber';
    if (!isNumber || !ONLY_SUMS.test(rest) || text.includes(':')) throw new NotNative('an argument is calculated in the formula');
    const inCopy = finishedFormula(text, { sheet: ownSheet }, this.scope);
    return { text: `(${inCopy})`, isConstant: false, value: undefined, count: 1, values: [], hasInchMark: false };
  }

  private argument(written: WrittenArgument, kind: ArgumentKind, row: number, ownSheet: string): NativeArgument | undefined {
    if (written.kind === 'omitted') return undefined;
    if (written.kind === 'constant') return this.constant(written.cells, kind);
    if (written.kind === 'expression') return this.sum(written.text, kind, ownSheet);
    const area = this.part(this.areaOf(written, ownSheet)!, row, kind);
    const { values, hasInchMark } = this.prepared(area, kind);
    const named = area.isNamed ? area.sheet : undefined;
    const text = kind === 'catalogue' ? '' : referenceInCopy(named, area.address, ownSheet, this.scope);
    return { text, isConstant: false, value: values[0]!, count: values.length, values, hasInchMark };
  }

  /**
   * The arguments of a call that stands at a place.
   * @throws NotNative where they cannot be told
   */
  arguments({ arguments: written }: FunctionCall, kinds: readonly ArgumentKind[], { sheet }: WorkbookCell): CallArguments {
    if (written.length > kinds.length) throw new NotNative('the function is given too many arguments');
    const heights = written.flatMap((argument, index) => {
      const kind = kinds[index]!;
      if (kind === 'list' || kind === 'catalogue' || kind === 'word') return [];
      return this.areaOf(argument, sheet)?.block.rows ?? [];
    });
    const height = Math.max(1, ...heights);
    if (heights.some(rows => rows !== 1 && rows !== height)) throw new NotNative('the columns are of unequal height');
    return { height, row: index => written.map((argument, at) => this.argument(argument, kinds[at]!, index, sheet)) };
  }
}
