/** Random numbers that are the same at every run. */
export interface RandomNumbers {
  /** Evenly spread over 0 … 1. */
  even(): number;
  /** Normal distribution with mean 0. */
  normal(standardDeviation: number): number;
}

/**
 * Seeded random numbers.
 * Source: a linear congruential generator, modulus 2³², multiplier 1664525, increment 1013904223 (Numerical Recipes, 2nd ed., 7.1);
 * normal ones as the sum of twelve even ones less six (central limit), which needs no logarithm.
 */
export function randomNumbers(seed: number): RandomNumbers {
  let state = seed >>> 0;
  const even = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const normal = (standardDeviation: number) => {
    let sum = -6;
    for (let draw = 0; draw < 12; draw++) sum += even();
    return sum * standardDeviation;
  };
  return { even, normal };
}
