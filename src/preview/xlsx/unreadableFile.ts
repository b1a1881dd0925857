/** A file that cannot be opened; its message is a sentence for the person who picked it. */
export class UnreadableFile extends Error {}

const LARGEST_BYTES = 60_000_000;

function startsWith(bytes: Uint8Array, ...start: number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}

/**
 * Refuses what is no .xlsx file before anyone tries to unpack it.
 * @throws UnreadableFile with what it is instead and what to do
 */
export function checkFileStart(bytes: Uint8Array, name: string): void {
  if (bytes.length === 0) throw new UnreadableFile(`${name} is empty.`);
  if (bytes.length > LARGEST_BYTES) {
    throw new UnreadableFile(
      `${name} is larger than ${LARGEST_BYTES / 1e6} MB: too large for the try-out sheet; open it in Excel.`,
    );
  }
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0)) {
    throw new UnreadableFile(
      `${name} is an old .xls workbook or protected by a password. Save it as .xlsx without one, and open that.`,
    );
  }
  if (!startsWith(bytes, 0x50, 0x4b)) {
    throw new UnreadableFile(`${name} is not an .xlsx workbook. Save it as .xlsx in your spreadsheet program, and open that.`);
  }
}
