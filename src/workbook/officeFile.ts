/** What the host of the add-in has of the office's catalogue, the file `catalogue/current.xlsx` beside the pages. */
export type OfficeFile =
  /** The office keeps none there. */
  | { readonly status: 'none' }
  /** It could not be asked for. */
  | { readonly status: 'unreachable'; readonly reason: string }
  /** What is there is no catalogue; a sentence names it. */
  | { readonly status: 'unusable'; readonly reason: string }
  | {
      readonly status: 'there';
      readonly name: string;
      readonly bytes: Uint8Array;
      /** The same as long as the file is: the host's ETag, else a hash of the bytes. */
      readonly tag: string;
    };

/** Asks for the office's catalogue; the same object as long as the file is the same. */
export type OfficeFileAsker = () => Promise<OfficeFile>;

/** The office's file is asked for anew when so much time has gone by: an hour. */
export const OFFICE_ASKED_AGAIN_AFTER_MS = 3_600_000;
