import type { CustomData } from '@univerjs/core';
import type { Worksheet } from 'exceljs';

/** Parts of a file's sheet that the page does not show; they are kept for the saved file as they were. */
export interface CarriedOver {
  /** Formats that depend on values. */
  readonly conditionalFormats?: readonly unknown[];
  /** Rules for what may be typed, by address. */
  readonly validations?: Readonly<Record<string, unknown>>;
}

interface FileSheet {
  conditionalFormattings?: unknown[];
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
export function writeCarriedOver(custom: CustomData | undefined, worksheet: Worksheet): void {
  const { conditionalFormats, validations } = (custom ?? {}) as CarriedOver;
  const file = worksheet as unknown as FileSheet;
  if (conditionalFormats) file.conditionalFormattings = structuredClone([...conditionalFormats]);
  if (validations && file.dataValidations) file.dataValidations.model = structuredClone({ ...validations });
}
