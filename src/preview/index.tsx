import { createRoot } from 'react-dom/client';
import { App } from './page/App';
import './preview.css';

createRoot(document.getElementById('page')!).render(<App />);
