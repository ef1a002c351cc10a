// Puts the app on the page.

import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { keepApp } from './shared/offline-start.ts';
import './styles/index.css';

const place = document.getElementById('app');
if (place === null) throw new Error('the page has no place for the app');
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
keepApp();
