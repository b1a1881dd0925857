import type { RawTable } from './rawTable';

/** A file that somebody picked or dropped. */
export interface PartsFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A sheet of a file: its table, or why it cannot be one of the catalogue's. */
export type FileSheet =
  { readonly table: RawTable; readonly reason?: undefined } | { readonly table?: undefined; readonly reason: string };
