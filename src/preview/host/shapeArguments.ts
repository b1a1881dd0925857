import type { Nullable } from '@univerjs/core';
import type { ArrayValueObject, BaseValueObject } from '@univerjs/engine-formula';
import { CellError } from './customFunctions';
import type { ParameterMetadata } from '../../workbook/functionMetadata';

/** A blank cell of a range arrives as empty text; null stands for an argument that is left out. */
const BLANK = '';

function cellOf(value: Nullable<BaseValueObject>): unknown {
  if (!value || value.isNull()) return BLANK;
  if (value.isError()) return new CellError(String(value.getValue()));
  return value.getValue();
}

function rowsOf(variant: BaseValueObject): unknown[][] {
  if (!variant.isArray()) return [[cellOf(variant)]];
  return (variant as ArrayValueObject)
    .getArrayValue()
    .map(row => Array.from(row as ArrayLike<Nullable<BaseValueObject>>, cellOf));
}

/**
 * Arguments as Excel hands them to a worksheet function, by its metadata: a matrix parameter gets rows of cells even for a single
 * value, an omitted one null, a blank cell "", an error value a CustomFunctions.Error.
 * @param parameters the function's parameters, in order
 * @param variants what the spreadsheet's engine gives for them; shorter where trailing arguments are left out
 */
export function shapeArguments(parameters: readonly ParameterMetadata[], variants: readonly BaseValueObject[]): unknown[] {
  return parameters.map((parameter, index) => {
    const variant = variants[index];
    if (!variant || variant.isNull()) return null;
    const rows = rowsOf(variant);
    return parameter.dimensionality === 'matrix' ? rows : (rows[0]?.[0] ?? BLANK);
  });
}
