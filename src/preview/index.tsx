import { createRoot } from 'react-dom/client';
import { App } from './page/App';
import { keepFocus } from '../taskpane/controls/keepFocus';
import { regionKeys } from './page/regionKeys';
import { loadAhead } from './page/heavyParts';
import './preview.css';

loadAhead();

// The sheet is drawn on a canvas, which does not wait for fonts by itself.
void Promise.all([document.fonts.load('11pt Calibri'), document.fonts.load('bold 11pt Calibri')])
  .catch(() => [])
  .then(start);

function start() {
  const page = document.getElementById('page')!;
  // First: it hears of F6 before that is answered.
  keepFocus(page, '.sheet');
  regionKeys();
  createRoot(page).render(<App />);
}
