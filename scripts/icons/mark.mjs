/**
 * Our mark: a hose end, seen along its axis, in a closed hexagon of six dies.
 * The icon is the unit square; lengths are shares of its edge.
 */
const DIE = [0x4f, 0x74, 0x97];
const HOSE = [0xc2, 0x3b, 0x6e];
const DIES = { outside: 0.43, inside: 0.295 };
const HOSE_RADII = { outside: 0.255, bore: 0.115 };
/** Directions of the dies' flats; the first points up. */
const FLATS = [90, 30, -30].map(degrees => [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]);

/**
 * Colour of a point, or undefined where the icon is clear.
 * @param {number} x,
 * @param {number} y both 0 … 1
 * @param {number} gap between neighbouring dies
 */
function colourAt(x, y, gap) {
  const [dx, dy] = [x - 0.5, y - 0.5];
  const radius = Math.hypot(dx, dy);
  if (radius <= HOSE_RADII.outside) return radius >= HOSE_RADII.bore ? HOSE : undefined;
  const heights = FLATS.map(([ux, uy]) => Math.abs(dx * ux + dy * uy)).sort((a, b) => b - a);
  // Where the two largest heights meet, two dies meet; their difference is the distance to that line.
  const toSeam = heights[0] - heights[1];
  if (heights[0] < DIES.inside || heights[0] > DIES.outside || toSeam < gap / 2) return undefined;
  return DIE;
}

/**
 * The mark as pixels, red green blue alpha, row by row; edges smoothed with 8 × 8 samples a pixel.
 * @param {number} size edge in pixels
 */
export function markPixels(size) {
  const samples = 8;
  const gap = Math.max(0.06, 1.1 / size);
  const pixels = new Uint8Array(size * size * 4);
  for (let pixel = 0; pixel < size * size; pixel++) {
    const hits = [];
    for (let sample = 0; sample < samples * samples; sample++) {
      const x = ((pixel % size) + ((sample % samples) + 0.5) / samples) / size;
      const y = (Math.floor(pixel / size) + (Math.floor(sample / samples) + 0.5) / samples) / size;
      const colour = colourAt(x, y, gap);
      if (colour) hits.push(colour);
    }
    const mean = channel => Math.round(hits.reduce((sum, colour) => sum + colour[channel], 0) / hits.length);
    if (hits.length > 0) pixels.set([mean(0), mean(1), mean(2), Math.round((255 * hits.length) / samples ** 2)], pixel * 4);
  }
  return pixels;
}
