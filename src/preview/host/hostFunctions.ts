import { AsyncObject, BaseFunction, type BaseValueObject } from '@univerjs/engine-formula';
import type { AssociatedFunction } from './customFunctions';
import type { FunctionMetadata, FunctionsFile } from '../../workbook/functionMetadata';
import { fastIndex } from './fastIndex';
import { shapeArguments } from './shapeArguments';
import { errorValue, shapeResult, shapeThrown } from './shapeResult';

/** The namespace our functions stand under in a cell. */
export const NAMESPACE = 'HOSE';

/** A class of the spreadsheet's engine and the name it is called by in a cell. */
export type EngineFunction = [new (name: string) => BaseFunction, string];

/** Worksheet functions ready for the spreadsheet's engine. */
export interface HostFunctions {
  readonly engineFunctions: EngineFunction[];
  /** Tells the cancelable calls that still run that nobody waits for them any more. */
  cancelRunning(): void;
}

function argumentCountError(entry: FunctionMetadata, count: number): BaseValueObject | undefined {
  const least = entry.parameters.filter(parameter => !parameter.optional).length;
  const most = entry.parameters.length;
  if (count >= least && count <= most) return undefined;
  const wanted = least === most ? `${least}` : `${least} to ${most}`;
  const names = entry.parameters.map(parameter => (parameter.optional ? `[${parameter.name}]` : parameter.name)).join(', ');
  return errorValue('#VALUE!', `${NAMESPACE}.${entry.name} takes ${wanted} arguments (${names}), ${count} came`);
}

function firstError(variants: readonly BaseValueObject[]): BaseValueObject | undefined {
  const cells = variants.flatMap(variant =>
    variant.isArray() ? (variant as unknown as { getArrayValue(): BaseValueObject[][] }).getArrayValue().flat() : [variant],
  );
  return cells.find(cell => cell?.isError());
}

/**
 * Makes the functions that functions.js associated callable in cells as `HOSE.<NAME>`.
 * @param file content of functions.json
 * @param functions what functions.js associated, by id
 * @throws Error where functions.json names a function that functions.js did not associate
 */
export function hostFunctions(file: FunctionsFile, functions: ReadonlyMap<string, AssociatedFunction>): HostFunctions {
  fastIndex();
  const running = new Set<{ onCanceled?: () => void }>();

  const call = (entry: FunctionMetadata, run: AssociatedFunction, variants: BaseValueObject[]): BaseValueObject | AsyncObject => {
    const wrong =
      argumentCountError(entry, variants.length) ?? (file.allowErrorForDataTypeAny ? undefined : firstError(variants));
    if (wrong) return wrong;
    const invocation: { functionName: string; onCanceled?: () => void } = { functionName: `${NAMESPACE}.${entry.name}` };
    try {
      const result = run(...shapeArguments(entry.parameters, variants), invocation);
      if (typeof (result as Promise<unknown> | undefined)?.then !== 'function') return shapeResult(result);
      running.add(invocation);
      const settled = Promise.resolve(result as Promise<unknown>)
        .then(shapeResult)
        .catch(shapeThrown);
      return new AsyncObject(settled.finally(() => running.delete(invocation)));
    } catch (thrown) {
      return shapeThrown(thrown);
    }
  };

  const engineFunction = (entry: FunctionMetadata): EngineFunction => {
    const run = functions.get(entry.id.toUpperCase());
    if (!run) throw new Error(`functions.json names ${entry.id}, functions.js does not associate it`);
    return [
      class extends BaseFunction {
        // Whether a function answers at once or later is not written in functions.json; the engine must be ready for both.
        override isAsync(): boolean {
          return true;
        }
        override calculate(...variants: BaseValueObject[]): ReturnType<BaseFunction['calculate']> {
          return call(entry, run, variants) as ReturnType<BaseFunction['calculate']>;
        }
      },
      `${NAMESPACE}.${entry.name.toUpperCase()}`,
    ];
  };

  return {
    engineFunctions: file.functions.map(engineFunction),
    cancelRunning() {
      for (const invocation of running) invocation.onCanceled?.();
      running.clear();
    },
  };
}
