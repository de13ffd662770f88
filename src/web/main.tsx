import './look/grounds.css';
import './look/page.css';
import './look/views.css';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { openFile } from './state/files.ts';
import { redo, undo } from './state/actions.ts';
import { servedByProgram } from './state/server.ts';
import { start } from './state/starting.ts';

const place = document.getElementById('page');
if (place !== null) createRoot(place).render(<App />);
void start();

addEventListener('keydown', (event) => {
  const typing = event.target instanceof HTMLInputElement && event.target.type !== 'checkbox';
  if (!(event.ctrlKey || event.metaKey) || typing || event.altKey) return;
  const key = event.key.toLowerCase();
  const run = key === 'z' && !event.shiftKey ? undo : key === 'y' || (key === 'z' && event.shiftKey) ? redo : undefined;
  if (run === undefined) return;
  event.preventDefault();
  void run();
});
addEventListener('dragover', (event) => {
  if (event.dataTransfer?.types.includes('Files') === true) event.preventDefault();
});
addEventListener('drop', (event) => {
  const [file] = event.dataTransfer?.files ?? [];
  if (file === undefined) return;
  event.preventDefault();
  void openFile(file);
});
if ('serviceWorker' in navigator && !servedByProgram && import.meta.env.PROD) void navigator.serviceWorker.register('./offline.js').catch(() => undefined);
