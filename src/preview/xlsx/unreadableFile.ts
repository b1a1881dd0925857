/** A file that cannot be opened; its message is a sentence for the person who picked it. */
export class UnreadableFile extends Error {}

const LARGEST_BYTES = 60_000_000;
const TEXT_NAME = /\.(csv|tsv|txt)$/i;

function startsWith(bytes: Uint8Array, ...start: number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}

/** True where a compound file holds an encrypted workbook: its stream has that name (MS-OFFCRYPTO 2.3.4.4), in UTF-16. */
function isEncrypted(bytes: Uint8Array): boolean {
  return new TextDecoder('utf-16le').decode(bytes).includes('EncryptedPackage');
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
      isEncrypted(bytes)
        ? `${name} is protected by a password. Save it without one, and open that.`
        : `${name} is an old .xls workbook. Save it as .xlsx in your spreadsheet program, and open that.`,
    );
  }
  if (!startsWith(bytes, 0x50, 0x4b) && TEXT_NAME.test(name)) {
    throw new UnreadableFile(
      `${name} is a text file. Open it in your spreadsheet program and save it as .xlsx; tables of parts go through Parts › Load in the task pane.`,
    );
  }
  if (!startsWith(bytes, 0x50, 0x4b)) {
    throw new UnreadableFile(`${name} is not an .xlsx workbook. Save it as .xlsx in your spreadsheet program, and open that.`);
  }
}
