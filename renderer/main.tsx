import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './theme/fonts.ts';
import './theme/base.css';
import './parts/board-card.css';
import './parts/parts.css';
import './parts/reason-list.css';
import './places/start/start.css';
import './places/find/find.css';
import './places/find/readings/readings.css';
import './places/intake/intake.css';
import './straight/straight.css';
import { assert } from '#core/quantity/assert.ts';
import { App } from './app.tsx';
import { Mishap } from './mishap.tsx';
import { hostClient } from './session/host.ts';
import { followSettings } from './session/machine-settings.ts';

const root = document.getElementById('app');
assert(root, 'the page has a place for the application');

// The theme is known before the first paint: no flash of the other one.
await followSettings(hostClient());
createRoot(root).render(
  <StrictMode>
    <Mishap>
      <App />
    </Mishap>
  </StrictMode>,
);
