/** A small problem in whole steps of the grid. */
export interface SmallCase {
  readonly pieces: readonly number[];
  readonly stock: readonly { readonly length: number; readonly count: number }[];
  readonly kerf: number;
  readonly squaring: number;
  readonly keep: number | undefined;
  readonly handling: number;
}

/** A repeatable source of random whole numbers in [low, high]. */
export function seeded(seed: number): (low: number, high: number) => number {
  let state = seed >>> 0;
  return (low, high) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return low + Math.floor((state / 2 ** 32) * (high - low + 1));
  };
}

/** A random problem of at most 8 pieces: often equal lengths, tight stock, offcuts that nearly serve. */
export function smallCase(seed: number): SmallCase {
  const random = seeded(seed * 7919 + 17);
  const kinds = random(1, 5);
  const scale = [12, 60, 400][random(0, 2)]!;
  const lengths = Array.from({ length: kinds }, () => random(1, scale));
  const pieces = Array.from({ length: random(1, 8) }, () => lengths[random(0, kinds - 1)]!);
  const stock = Array.from({ length: random(1, 4) }, () => ({
    length: random(Math.ceil(scale / 2), 3 * scale),
    count: random(0, 5) === 0 ? Infinity : random(1, 3),
  }));
  return {
    pieces,
    stock,
    kerf: random(0, 2) === 0 ? 0 : random(1, Math.ceil(scale / 20)),
    squaring: random(0, 2) === 0 ? random(1, Math.ceil(scale / 10)) : 0,
    keep: random(0, 2) === 0 ? undefined : random(0, scale),
    handling: random(0, 1) === 0 ? 0 : random(1, scale),
  };
}

/** Least loss by trying every way to share the pieces out; Infinity where the stock is not enough. */
export function leastLoss(small: SmallCase): number {
  const all = leastLosses(small);
  return all[all.length - 1]!;
}

/** Least length that stays uncut, with its kerfs. */
export function leastMissing(small: SmallCase): number {
  const { pieces, kerf } = small;
  return leastLosses(small).reduce((least, loss, cut) => {
    if (loss === Infinity) return least;
    const missing = pieces.reduce((sum, piece, k) => (cut & (1 << k) ? sum : sum + piece + kerf), 0);
    return Math.min(least, missing);
  }, Infinity);
}

/** Least loss for every set of pieces (bit k = piece k). */
function leastLosses({ pieces, stock, kerf, squaring, keep, handling }: SmallCase): Float64Array {
  const n = pieces.length;
  const all = (1 << n) - 1;
  const sum = new Float64Array(all + 1);
  const size = new Int32Array(all + 1);
  for (let set = 1; set <= all; set++) {
    const last = 31 - Math.clz32(set);
    sum[set] = sum[set ^ (1 << last)]! + pieces[last]!;
    size[set] = size[set ^ (1 << last)]! + 1;
  }
  const worth = (x: number) => (keep === undefined ? 0 : Math.max(0, x - keep));
  const lossOf = (length: number, set: number) => {
    if (sum[set]! + (size[set]! - 1) * kerf > length - squaring) return Infinity;
    const left = Math.max(0, length - squaring - sum[set]! - size[set]! * kerf);
    return (keep === undefined ? length : worth(length)) - worth(left) + handling;
  };
  let best = new Float64Array(all + 1).fill(Infinity);
  best[0] = 0;
  for (const { length, count } of stock) {
    for (let copy = 0; copy < Math.min(count, n); copy++) {
      const next = best.slice();
      for (let cut = 1; cut <= all; cut++) {
        const loss = lossOf(length, cut);
        if (loss === Infinity) continue;
        const rest = all ^ cut;
        for (let done = rest; ; done = (done - 1) & rest) {
          const total = best[done]! + loss;
          if (total < next[done | cut]!) next[done | cut] = total;
          if (done === 0) break;
        }
      }
      best = next;
    }
  }
  return best;
}
