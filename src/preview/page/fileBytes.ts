import { UnreadableFile } from '../xlsx/unreadableFile';

/**
 * The bytes of a file that was picked or dropped.
 * @throws UnreadableFile where the browser gives none: a folder, or a file that was moved or is locked
 */
export async function fileBytes(file: File): Promise<Uint8Array> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    throw new UnreadableFile(`${file.name} could not be read: is it a folder, moved away, or locked by another program?`);
  }
}
