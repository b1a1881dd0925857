/** Newest points of a combination or chart that are drawn: more would only hide each other. All of them are reckoned with. */
export const MOST_DRAWN = 200;
