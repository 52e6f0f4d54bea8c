// One press takes over what the weighing plan hands on, into the fields on show.

import { carryFragment } from './address.js';

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const { from, to } = root.dataset;
  const draft = await app.store.get('drafts', from);
  const carry = draft?.carries?.find((/** @type {any} */ one) => one.to === to);
  const button = root.querySelector('button');
  root.querySelector('[data-part="what"]').textContent = carry?.says;
  button.hidden = !carry;
  /** @type {HTMLElement} */ (root.querySelector('[data-part="none"]')).hidden = !button.hidden; // one or the other: nothing below moves
  const take = () => location.replace(carryFragment(carry, draft));
  button.addEventListener('click', take);
  return () => button.removeEventListener('click', take);
}
