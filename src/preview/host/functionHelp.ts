import { FunctionType, type IFunctionInfo } from '@univerjs/engine-formula';
import type { FunctionMetadata, ParameterMetadata } from '../../workbook/functionMetadata';
import { NAMESPACE } from './hostFunctions';

function parameterHelp(parameter: ParameterMetadata) {
  return {
    name: parameter.name,
    detail: parameter.description ?? '',
    example: parameter.name,
    require: parameter.optional ? 0 : 1,
    repeat: 0,
  };
}

/** What the formula editor shows while one of our functions is typed: its sentence, and each argument's. */
export function functionHelp(functions: readonly FunctionMetadata[]): IFunctionInfo[] {
  return functions.map(entry => ({
    functionName: `${NAMESPACE}.${entry.name}`,
    functionType: FunctionType.User,
    description: entry.description ?? '',
    abstract: entry.description ?? '',
    functionParameter: entry.parameters.map(parameterHelp),
  }));
}
