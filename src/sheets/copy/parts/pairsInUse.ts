import { functionCalls, type FunctionCall } from '../../../workbook/functionCall';
import type { CallReader } from '../callArguments';
import type { WorkbookCell } from '../workbookCell';
import { eachFilledCell, type CopySource } from '../copySource';
import { withoutNames } from '../definedNames';
import { NATIVE_FUNCTIONS } from '../native/nativeFunctions';
import { NotNative } from '../notNative';
import type { PartsPair } from './crimpKeys';

/** Functions that look up crimp data, with the places of hose and fitting among their arguments. */
const PAIRS: Readonly<Record<string, readonly (readonly [hose: number, fitting: number])[]>> = {
  CRIMPSETUP: [[1, 2]],
  ASSEMBLY: [
    [1, 2],
    [1, 3],
  ],
  UNITCOST: [
    [1, 2],
    [1, 3],
  ],
};

function pairsOf(call: FunctionCall, place: WorkbookCell, reader: CallReader): PartsPair[] {
  const wanted = PAIRS[call.id];
  if (!wanted) return [];
  try {
    const { height, row } = reader.arguments(call, NATIVE_FUNCTIONS[call.id]!.arguments, place);
    const rows = Array.from({ length: height }, (_, index) => row(index).map(given => String(given?.value ?? '').trim()));
    return rows
      .flatMap(values => wanted.map(([hose, fitting]) => ({ hose: values[hose] ?? '', fitting: values[fitting] ?? '' })))
      .filter(({ hose, fitting }) => hose !== '' && fitting !== '');
  } catch (error) {
    if (error instanceof NotNative) return [];
    throw error;
  }
}

/** Hoses with their fittings, as the formulas of the copied sheets name them. */
export function pairsInUse(source: CopySource, sheets: Iterable<string>, reader: CallReader): PartsPair[] {
  const found: PartsPair[] = [];
  for (const name of sheets) {
    const sheet = source.sheets.get(name)!;
    for (const place of eachFilledCell(sheet)) {
      const formula = withoutNames(sheet.cells.formula(place.row, place.column), source);
      for (const call of functionCalls(formula)) found.push(...pairsOf(call, place, reader));
    }
  }
  return found;
}
