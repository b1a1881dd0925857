import { encode } from 'uqr';

/** White modules round the code that readers need. Source: ISO/IEC 18004 (4 modules). */
const QUIET = 4;

/** A QR code as SVG text, one path, quiet zone included; reads with 15 % of it damaged (level M). */
export function qrPicture(text: string): string {
  const { data, size } = encode(text, { ecc: 'M', border: QUIET });
  const dark = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])));
  return `<svg class="qr" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges" aria-hidden="true" xmlns="http://www.w3.org/2000/svg"><rect width="${size}" height="${size}" fill="#fff"/><path d="${dark.join('')}" fill="#000"/></svg>`;
}
