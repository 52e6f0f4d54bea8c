// One press takes over what the weighing plan knows, into the fields on show.

import { prefilled } from './plan-figures.js';

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const draft = await app.store.get('drafts', root.dataset.from);
  const found = Object.entries(prefilled(draft?.inputs, JSON.parse(root.dataset.prefill)));
  const units = JSON.parse(root.dataset.units);
  const texts = found.map(([name, { typed, units: system }]) => [name, /[a-z]/i.test(typed) ? typed : `${typed} ${units[name][system]}`]);
  root.querySelector('[data-part="what"]').textContent = texts.map(([, text]) => text).join(', ');
  const button = root.querySelector('button');
  button.hidden = texts.length === 0;
  /** @type {HTMLElement} */ (root.querySelector('[data-part="none"]')).hidden = !button.hidden; // one or the other: nothing below moves
  const take = () => {
    for (const [name, text] of texts) {
      const input = /** @type {HTMLInputElement|null} */ (document.getElementById(`f-${name}`));
      if (!input) continue;
      input.value = text;
      input.dispatchEvent(new Event('input', { bubbles: true }));
    }
  };
  button.addEventListener('click', take);
  return () => button.removeEventListener('click', take);
}
