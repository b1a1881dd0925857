import { createRoot } from 'react-dom/client';
import { App } from './page/App';
import { regionKeys } from './page/regionKeys';
import { loadAhead } from './page/heavyParts';
import './preview.css';

loadAhead();

// The sheet is drawn on a canvas, which does not wait for fonts by itself.
void Promise.all([document.fonts.load('11pt Calibri'), document.fonts.load('bold 11pt Calibri')])
  .catch(() => [])
  .then(start);

function start() {
  regionKeys();
  createRoot(document.getElementById('page')!).render(<App />);
}
