/* Secure Hash Algorithm 256. Source: FIPS 180-4, sections 4.1.2, 5 and 6.2. Written out because the functions must answer at once and
   the platform's own digest (crypto.subtle) only answers later. */

/** First 32 bits of the fractional parts of the `root`-th roots of the first primes (FIPS 180-4, 4.2.2 and 5.3.3). */
function primeRoots(count: number, root: number): Uint32Array {
  const words: number[] = [];
  for (let candidate = 2; words.length < count; candidate++) {
    let prime = true;
    for (let divisor = 2; divisor * divisor <= candidate; divisor++) if (candidate % divisor === 0) prime = false;
    if (prime) words.push((candidate ** (1 / root) % 1) * 2 ** 32);
  }
  return Uint32Array.from(words);
}

const K = primeRoots(64, 3);
const INITIAL = primeRoots(8, 2);

function padded(bytes: Uint8Array): DataView {
  const blocks = new Uint8Array((((bytes.length + 8) >> 6) + 1) << 6);
  blocks.set(bytes);
  blocks[bytes.length] = 0x80;
  const view = new DataView(blocks.buffer);
  view.setUint32(blocks.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(blocks.length - 4, (bytes.length << 3) >>> 0);
  return view;
}

function schedule(view: DataView, block: number, w: Int32Array): void {
  for (let t = 0; t < 16; t++) w[t] = view.getInt32(block + 4 * t);
  for (let t = 16; t < 64; t++) {
    const x = w[t - 15]!;
    const y = w[t - 2]!;
    const s0 = ((x >>> 7) | (x << 25)) ^ ((x >>> 18) | (x << 14)) ^ (x >>> 3);
    const s1 = ((y >>> 17) | (y << 15)) ^ ((y >>> 19) | (y << 13)) ^ (y >>> 10);
    w[t] = w[t - 16]! + s0 + w[t - 7]! + s1;
  }
}

function compress(state: Int32Array, w: Int32Array): void {
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number];
  for (let t = 0; t < 64; t++) {
    const s1 = ((e >>> 6) | (e << 26)) ^ ((e >>> 11) | (e << 21)) ^ ((e >>> 25) | (e << 7));
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + K[t]! + w[t]!) | 0;
    const s0 = ((a >>> 2) | (a << 30)) ^ ((a >>> 13) | (a << 19)) ^ ((a >>> 22) | (a << 10));
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, index) => (state[index] = state[index]! + word));
}

/**
 * SHA-256 of bytes.
 * @returns 64 hexadecimal digits
 * @example sha256(new Uint8Array()) // e3b0c442…
 */
export function sha256(bytes: Uint8Array): string {
  const view = padded(bytes);
  const state = Int32Array.from(INITIAL);
  const w = new Int32Array(64);
  for (let block = 0; block < view.byteLength; block += 64) {
    schedule(view, block, w);
    compress(state, w);
  }
  return Array.from(state, word => (word >>> 0).toString(16).padStart(8, '0')).join('');
}
