/*
 * Constants of the rule, in tolerances where they are diameters. They were set on simulated books of crimps, see bench/README.md.
 * The form of the rule from memory: Raftery, Madigan & Hoeting 1997 (Bayesian linear models, conjugate prior); Madigan & Raftery 1994
 * (models within a limit of the best); Schwarz 1978, Chen & Chen 2008 (penalty for causes that were searched for).
 */

/** Standard deviation between combinations that is always there and no cause (random effect, Laird & Ware 1982). */
export const SPREAD = 0.05;
/** Scatter believed in before any crimp, and how many differences that belief is worth. */
export const PRIOR_SCATTER = 0.3;
export const PRIOR_WEIGHT = 2;
/** Standard deviation of what a cause adds, and of what a single stray crimp is off by. */
export const EFFECT = 1;
export const STRAY_EFFECT = 2;
/** Causes are searched for at no more boundaries between dates than this, and in no more single crimps. */
export const MOST_BOUNDARIES = 60;
export const MOST_STRAYS = 40;
/** A crimp so many scatters from its neighbours may be a cause of its own (Hampel 1974). */
export const STRAY_DISTANCE = 3.5;
export const MOST_CAUSES = 14;
export const MOST_MACHINE_CHANGES = 4;
/** Models kept: those within this of the best, no more than so many. */
export const KEPT_WITHIN = 12;
export const MOST_MODELS = 2000;
/** Models of each size that the search goes on from, and models in which causes are exchanged. */
export const BEAM = 10;
export const EXCHANGED = 4;
export const EXCHANGE_ROUNDS = 6;
/** Two explanations agree where they differ by no more than this. */
export const AGREE = 0.25;
/** Explanations of no more causes that fit nearly as well are rivals (factor of about 20, Kass & Raftery 1995). */
export const RIVAL_WITHIN = 6;
/** A next crimp tells two explanations apart where their predictions differ by this. */
export const TELLING = 0.35;
