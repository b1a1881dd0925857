/** Cautions for the bench, printed on every page of cards. */
export const BENCH_CAUTIONS = [
  'The makers’ current data come first; this card does not replace them or training. Do not mix hose, couplings or equipment of different makers unless the makers approve it in writing.',
  'Keep hands and loose parts out of the crimper; lock it out before changing dies. A new dial setting is tried on one trial piece first. Scrap what is out of spec: do not crimp it again unless the maker allows it.',
  'Proof-test with liquid, air bled, behind a shield. Never feel for leaks by hand: a fluid-injection wound is an emergency even if it looks small. The weakest part sets the rating, surges included.',
  'Local law, codes and a qualified person decide.',
] as const;

/** For who cuts, on the cut plan and on the list. */
export const CUT_CAUTION =
  'Cut only hose whose marking names the hose of the line. Do not mix hose, couplings or equipment of different makers unless the makers approve it in writing. The makers’ current data come first; this list does not replace them or training.';

/** For who sells or buys by a rating. */
export const RATING_CAUTION =
  'Working pressures are those of the weakest part, surges included, at the temperature beside them. What reads “not derated”, “no derating stated” or “not checked” has not been checked. The makers’ current data come first; local law, codes and a qualified person decide.';

/** The shortest of them, on every card: cards are cut apart. */
export const CARD_CAUTION =
  'Makers’ data first. Hands out of the dies. New dial: trial piece first. Out of spec: scrap. Test behind a shield; never feel for leaks.';

/** Where the four readings of a crimp are taken. Source: common practice of the trade. */
export const WHERE_TO_MEASURE = 'across flats, mid crimp length, between the die ridges, 45° apart';
