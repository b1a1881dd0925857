import { act, fireEvent } from '@testing-library/react';

/** Presses the tabs that lead to a place of the pane, like `quote/duty`, and lets the view under them read what it wants to. */
export async function openPlace(place: string): Promise<void> {
  const [tab, view] = place.split('/');
  fireEvent.click(document.getElementById(`tab-${tab}`)!);
  if (view) fireEvent.click(document.getElementById(`tab-${tab}-${view}`)!);
  await act(() => new Promise(resolve => setTimeout(resolve, 20)));
}
