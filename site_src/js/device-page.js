// About: what this device can do and keeps, and the button that forgets it all.

import * as wakeLock from './device/wake-lock.js';
import { report } from './sw-client.js';

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const ending = new AbortController();
  const part = (/** @type {string} */ name) => /** @type {HTMLElement} */ (root.querySelector(`[data-part="${name}"]`));
  const showDesk = () => (part('desk').textContent = part('desk').dataset[app.desk.state]);
  const showRecords = async () => {
    const [drafts, runs] = await Promise.all([app.store.all('drafts'), app.store.all('runs')]);
    part('records').textContent = String(drafts.length + runs.length);
  };

  app.desk.addEventListener('state', showDesk, { signal: ending.signal });
  showDesk();
  part('wake-lock').textContent = part('wake-lock').dataset[wakeLock.available() ? 'yes' : 'no'];
  wireForget(/** @type {HTMLButtonElement} */ (part('forget')), app, showRecords);
  report(false).then((kept) => {
    const key = !kept?.shell ? 'no' : kept.engine ? 'yes' : 'shell';
    part('offline').textContent = part('offline').dataset[key];
  });
  await showRecords();
  return () => ending.abort();
}

/** Two presses, so that a slip of the thumb forgets nothing. @param {HTMLButtonElement} button @param {import('./app.js').App} app @param {() => unknown} after */
function wireForget(button, app, after) {
  const words = button.textContent;
  let sure = false;
  button.addEventListener('click', async () => {
    if (!sure) {
      sure = true;
      button.textContent = button.dataset.sure;
      return;
    }
    sure = false;
    button.textContent = (await app.store.clear()) ? button.dataset.done : words;
    after();
  });
  button.addEventListener('blur', () => {
    sure = false;
    button.textContent = words;
  });
}
