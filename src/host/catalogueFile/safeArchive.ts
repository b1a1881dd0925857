import { unzipSync, zipSync } from 'fflate';
import { LARGEST_UNPACKED, UnreadableTable } from './fileLimits';

/**
 * The same .xlsx archive, unpacked once within a limit and stored without compression: whatever opens it next cannot be made to unpack
 * more. An entry is never unpacked beyond the size that its own header states, and the stated sizes together stay within the limit.
 * @throws UnreadableTable where it is no archive, is damaged, or unpacks to more than a workbook of parts does
 */
export function safeArchive(name: string, bytes: Uint8Array): Uint8Array {
  let size = 0;
  try {
    const entries = unzipSync(bytes, {
      filter: ({ originalSize }) => {
        size += originalSize;
        if (size > LARGEST_UNPACKED) {
          throw new UnreadableTable(`${name} unpacks to more than ${LARGEST_UNPACKED / 2 ** 20} MB: it is not opened`);
        }
        return true;
      },
    });
    return zipSync(entries, { level: 0 });
  } catch (error) {
    if (error instanceof UnreadableTable) throw error;
    throw new UnreadableTable(`${name} is no .xlsx file, or it is damaged`);
  }
}
