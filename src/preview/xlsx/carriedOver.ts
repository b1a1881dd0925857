import type { CustomData } from '@univerjs/core';
import type { Worksheet } from 'exceljs';
import type { FileFormat } from './fileFormats';

/** Parts of a file's sheet that are kept as they were, for the saved file. */
export interface CarriedOver {
  /** Formats that depend on values; the page draws most of them (conditionalFormats.ts). */
  readonly conditionalFormats?: readonly FileFormat[];
  /** Rules for what may be typed, by address. */
  readonly validations?: Readonly<Record<string, unknown>>;
}

interface FileSheet {
  conditionalFormattings?: FileFormat[];
  dataValidations?: { model: Record<string, unknown> };
}

/** What the page does not show of a file's sheet. */
export function readCarriedOver(worksheet: Worksheet): CarriedOver {
  const { conditionalFormattings = [], dataValidations } = worksheet as unknown as FileSheet;
  const validations = dataValidations?.model ?? {};
  return {
    ...(conditionalFormattings.length > 0 && { conditionalFormats: conditionalFormattings }),
    ...(Object.keys(validations).length > 0 && { validations }),
  };
}

/** Puts it back. */
export function writeCarriedOver(
  custom: CustomData | undefined,
  conditionalFormats: readonly FileFormat[],
  worksheet: Worksheet,
): void {
  const { validations } = (custom ?? {}) as CarriedOver;
  const file = worksheet as unknown as FileSheet;
  if (conditionalFormats.length > 0) file.conditionalFormattings = structuredClone([...conditionalFormats]);
  if (validations && file.dataValidations) file.dataValidations.model = structuredClone({ ...validations });
}
