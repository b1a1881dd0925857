/**
 * A text as UTF-8. (TextEncoder is missing in some of the runtimes that load worksheet functions.)
 * @param text lone surrogates become U+FFFD, as TextEncoder does it
 */
export function utf8(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length * 3);
  let length = 0;
  for (let index = 0; index < text.length; index++) {
    let code = text.charCodeAt(index);
    if (code < 0x80) {
      bytes[length++] = code;
      continue;
    }
    if (code >= 0xd800 && code < 0xe000) {
      const whole = text.codePointAt(index)!;
      if (whole > 0xffff) index++;
      code = whole > 0xffff ? whole : 0xfffd;
    }
    if (code < 0x800) bytes[length++] = 0xc0 | (code >> 6);
    else {
      if (code > 0xffff) {
        bytes[length++] = 0xf0 | (code >> 18);
        bytes[length++] = 0x80 | ((code >> 12) & 63);
      } else bytes[length++] = 0xe0 | (code >> 12);
      bytes[length++] = 0x80 | ((code >> 6) & 63);
    }
    bytes[length++] = 0x80 | (code & 63);
  }
  return bytes.subarray(0, length);
}
