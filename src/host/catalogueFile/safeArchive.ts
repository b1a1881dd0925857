import { unzipSync, zipSync } from 'fflate';
import { boundedPart, type LeftOut } from './boundedParts';
import { LARGEST_UNPACKED, UnreadableTable } from './fileLimits';

/** An archive that opens in bounded time and memory. */
export interface SafeArchive {
  readonly bytes: Uint8Array;
  /** What had to be left out, or shortened, to that end. */
  readonly leftOut: readonly LeftOut[];
}

/**
 * The same .xlsx archive, unpacked once within a limit and stored without compression: whatever opens it next cannot be made to unpack
 * more. An entry is never unpacked beyond the size that its own header states, and the stated sizes together stay within the limit.
 * Parts that would be counted cell by cell through a whole sheet are bounded (boundedParts.ts).
 * @throws UnreadableTable where it is no archive, is damaged, or unpacks to more than a workbook of parts does
 */
export function safeArchive(name: string, bytes: Uint8Array): SafeArchive {
  let size = 0;
  const leftOut = new Set<LeftOut>();
  try {
    const entries = unzipSync(bytes, {
      filter: ({ originalSize }) => {
        size += originalSize;
        if (size > LARGEST_UNPACKED) {
          throw new UnreadableTable(`${name} unpacks to more than ${LARGEST_UNPACKED / 2 ** 20} MB, so it was not opened`);
        }
        return true;
      },
    });
    const bounded = Object.fromEntries(
      Object.entries(entries).map(([path, part]) => [path, boundedPart(path, part, kind => leftOut.add(kind))]),
    );
    return { bytes: zipSync(bounded, { level: 0 }), leftOut: [...leftOut] };
  } catch (error) {
    if (error instanceof UnreadableTable) throw error;
    throw new UnreadableTable(`${name} is not an .xlsx file, or it is damaged`);
  }
}
