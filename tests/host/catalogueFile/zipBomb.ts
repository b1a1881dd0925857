import { crc32, deflateRawSync } from 'node:zlib';

/** A header of an archive: its fields, each with its number of bytes, in the order of PKWARE's APPNOTE.TXT (4.3, from memory). */
function header(...fields: readonly (readonly [bytes: 2 | 4, value: number])[]): Buffer {
  const buffer = Buffer.alloc(fields.reduce((sum, [bytes]) => sum + bytes, 0));
  let at = 0;
  for (const [bytes, value] of fields) at = buffer.writeUIntLE(value, at, bytes);
  return buffer;
}

/**
 * An .xlsx archive of one sheet that weighs little and unpacks to very much, all zeros. Node packs it in a tenth of the time that fflate takes.
 * @param megabytes size of the unpacked sheet, in units of 2^20 bytes
 */
export function zipBomb(megabytes: number): Uint8Array {
  const name = Buffer.from('xl/worksheets/sheet1.xml');
  const sheet = Buffer.alloc(megabytes * 2 ** 20);
  const packed = deflateRawSync(sheet, { level: 9 });
  // Version 2.0, no flags, deflated, no date, checksum, both sizes, length of the name, no extra field.
  const entry = [
    ...([
      [2, 20],
      [2, 0],
      [2, 8],
      [4, 0],
      [4, crc32(sheet)],
    ] as const),
    ...([
      [4, packed.length],
      [4, sheet.length],
      [2, name.length],
      [2, 0],
    ] as const),
  ] as const;
  const local = Buffer.concat([header([4, 0x04034b50], ...entry), name, packed]);
  // Made by version 2.0; after the entry's fields no comment, first disk, no attributes, entry from byte 0 on.
  const central = Buffer.concat([header([4, 0x02014b50], [2, 20], ...entry, [2, 0], [2, 0], [2, 0], [4, 0], [4, 0]), name]);
  const end = header([4, 0x06054b50], [2, 0], [2, 0], [2, 1], [2, 1], [4, central.length], [4, local.length], [2, 0]);
  return Buffer.concat([local, central, end]);
}
