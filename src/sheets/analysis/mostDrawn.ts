/** Newest points of a combination or chart that are drawn: more would only hide each other. The numbers come from all of them. */
export const MOST_DRAWN = 200;
