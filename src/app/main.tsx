/** Starts the program in the page. */
import { createRoot } from 'react-dom/client';
import './look.css';

createRoot(document.getElementById('root')!).render(<h1>Cagewright</h1>);
