/** Start: the look, the kept work or the demo, the page. */
import './fonts.css';
import './look.css';
import './shell.css';
import '../ui/kit/press.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { startPage } from '../store/page.ts';
import { isInvited, isPairedHere } from '../store/pairing/paired-here.ts';
import { App } from './App.tsx';
import { Boundary } from './Boundary.tsx';
import { enterPending } from './commands.ts';
import { showKeptLight } from './light.ts';

showKeptLight();
startPage(enterPending);
const pair = (): void => void import('../store/pairing-page.ts').then(({ startPairing }) => startPairing());
if (isPairedHere()) pair();
// An invitation that is opened in a tab where the page is already.
window.addEventListener('hashchange', () => isInvited() && pair());
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <Boundary part="The program">
      <App />
    </Boundary>
  </StrictMode>,
);
