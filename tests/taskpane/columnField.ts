import { fireEvent, screen } from '@testing-library/react';

/** Where somebody says what a column is. It is in a fold that is opened first, and drawn a moment later: to be asked for inside `waitFor`. */
export function columnField(label: string | RegExp): HTMLSelectElement {
  for (const summary of screen.queryAllByText('Columns read', { selector: 'details:not([open]) > summary' })) {
    fireEvent.click(summary);
  }
  return screen.getByLabelText<HTMLSelectElement>(label);
}
