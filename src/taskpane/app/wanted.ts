/** What the page around the pane wants shown; a new object is a new wish. */
export interface Wanted {
  /** A place of the pane, like `quote/duty`; one that the pane does not have changes nothing. */
  readonly place: string;
  /** How the strip about the selected cell is to stand; left as it is where nothing is said. */
  readonly strip?: 'open' | 'folded';
}
