import type { CopiedParts } from '../parts/copiedParts';
import type { NativeArgument, NativeContext } from './nativeFunction';
import { NotNative } from '../notNative';

/** Longest text that a search takes. */
const LONGEST_KEY = 255;

export function partsOf({ parts }: NativeContext): CopiedParts {
  if (!parts) throw new NotNative('the copy has no parts data');
  return parts;
}

/** A name without outer blanks, as a search takes it. */
export const trimmed = ({ text }: NativeArgument): string => `TRIM(${text})`;

/** Two names side by side must stay below what a search takes. */
export function requireShort(...names: readonly NativeArgument[]): void {
  const length = names.reduce((sum, { value }) => sum + String(value ?? '').length + 1, 0);
  if (length > LONGEST_KEY) throw new NotNative('the names are too long for a search');
}

/** A field, blank where it is: a reference to a blank cell would give 0. */
export const orBlank = (field: string): string => `IF(${field}="","",${field})`;
