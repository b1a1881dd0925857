/**
 * Constants of the rule, in tolerances where they are diameters. They were set on simulated books of crimps, see bench/README.md.
 * The form of the rule from memory: Raftery, Madigan & Hoeting 1997 (Bayesian linear models, conjugate prior); Madigan & Raftery 1994
 * (models within a limit of the best); Schwarz 1978, Chen & Chen 2008 (penalty for causes that were searched for).
 */
export const RULE = {
  /** Standard deviation between combinations that is always there and no cause (random effect, Laird & Ware 1982). */
  spread: 0.05,
  /** Scatter believed in before any crimp, and how many differences that belief is worth. */
  priorScatter: 0.3,
  priorWeight: 2,
  /** Standard deviation of what a cause adds, and of what a single stray crimp is off by. */
  effect: 1,
  strayEffect: 2,
  /** Causes are searched for at no more boundaries between dates than this, and in no more single crimps. */
  mostBoundaries: 60,
  mostStrays: 40,
  /** A crimp so many scatters from its neighbours may be a cause of its own (Hampel 1974). */
  strayDistance: 3.5,
  mostCauses: 14,
  mostMachineChanges: 4,
  /** Models kept: those within this of the best, no more than so many. */
  keptWithin: 12,
  mostModels: 2000,
  /** Models of each size that the search goes on from, and models in which causes are exchanged. */
  beam: 10,
  exchanged: 4,
  exchangeRounds: 6,
  /** Two explanations agree where they differ by no more than this. */
  agree: 0.25,
  /** Explanations of no more causes that fit nearly as well are rivals (factor of about 20, Kass & Raftery 1995). */
  rivalWithin: 6,
  /** A next crimp tells two explanations apart where their predictions differ by this. */
  telling: 0.35,
} as const;
