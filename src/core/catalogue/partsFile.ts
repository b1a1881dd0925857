import type { RawTable } from './rawTable';

/** A file that somebody picked or dropped. */
export interface PartsFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A sheet of a file: its table, or why it cannot be one of the catalogue's. */
export type FileSheet =
  | {
      readonly table: RawTable;
      readonly reason?: undefined;
      /** Its numbers have decimal commas, so that a text left as `1.250` means 1250. */
      readonly decimalComma?: boolean;
    }
  | { readonly table?: undefined; readonly reason: string };
