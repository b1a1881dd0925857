import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import { quickGlobals } from '../../src/preview/headless/quickGlobals';
import { builtFile } from '../builtFile';

interface Metadata {
  readonly allowErrorForDataTypeAny?: boolean;
  readonly allowCustomDataForDataTypeAny?: boolean;
  readonly functions: readonly {
    readonly id: string;
    readonly name: string;
    readonly description: string;
    readonly helpUrl: string;
    readonly options?: Readonly<Record<string, boolean>>;
    readonly parameters: readonly { readonly name: string; readonly description: string; readonly optional?: boolean }[];
  }[];
}

/** dist/functions.json. */
export const metadata = JSON.parse(readFileSync(builtFile('functions.json'), 'utf8')) as Metadata;

/** Text of dist/functions.js. */
export const script = readFileSync(builtFile('functions.js'), 'utf8');

/** The error class of the world that the script is loaded in. */
export class CellError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

/** The built script in a world that has nothing but the language and what Excel gives a functions script. */
export function loadedFunctions(): Map<string, (...args: unknown[]) => any> {
  const functions = new Map<string, (...args: unknown[]) => any>();
  const CustomFunctions = {
    Error: CellError,
    ErrorCode: {},
    associate: (id: string, worksheetFunction: (...args: unknown[]) => any) => functions.set(id, worksheetFunction),
  };
  const world = createContext({ CustomFunctions });
  runInContext(quickGlobals, world);
  runInContext(script, world);
  return functions;
}

const functions = loadedFunctions();
const shown = (cell: unknown) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : cell);

/**
 * Calls a function of the built script as Excel does: every argument a block of cells, null for one that is left out, the invocation last.
 * @returns the cells, errors as `#CODE sentence`; an error of the whole call is one cell
 */
export async function excelCall(id: string, ...args: readonly unknown[]): Promise<unknown[][]> {
  const { parameters } = metadata.functions.find(described => described.id === id)!;
  const blocks = parameters.map((_, index) => {
    const given = args[index] ?? null;
    return given === null || Array.isArray(given) ? given : [[given]];
  });
  try {
    const result: unknown[][] = await functions.get(id)!(...blocks, {});
    return result.map(row => row.map(shown));
  } catch (error) {
    if (error instanceof CellError) return [[shown(error)]];
    throw error;
  }
}
