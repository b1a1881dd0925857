import { deflateSync } from 'node:zlib';

/**
 * A PNG file (8 bits a channel, with alpha) of an image.
 * @param {number} size edge in pixels
 * @param {Uint8Array} pixels red green blue alpha, row by row
 */
export function png(size, pixels) {
  const rows = Buffer.alloc(size * (size * 4 + 1)); // each row starts with filter type 0
  for (let row = 0; row < size; row++) rows.set(pixels.subarray(row * size * 4, (row + 1) * size * 4), row * (size * 4 + 1) + 1);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 6, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const frame = Buffer.alloc(body.length + 8);
  frame.writeUInt32BE(data.length, 0);
  frame.set(body, 4);
  frame.writeUInt32BE(crc(body), body.length + 4);
  return frame;
}

/** CRC-32 of PNG (ISO 3309); zlib has its own only from Node 20.15 on. */
function crc(bytes) {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return ~value >>> 0;
}
