// What another question hands on, offered for one press: always, or, where it names what it is about, once that was taken over and is not so any more.

import { carryFragment } from './address.js';

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const { from, to, names } = root.dataset;
  const [draft, own] = await Promise.all([app.store.get('drafts', from), app.store.get('drafts', to)]);
  const carry = draft?.carries?.find((/** @type {any} */ one) => one.to === to);
  const button = root.querySelector('button');
  if (names) {
    const told = names.split(' ').map((name) => [own?.inputs?.[name]?.typed, carry?.inputs[name]]);
    root.hidden = !carry || !told[0][0] || told.every(([here, there]) => here === there);
  } else {
    root.querySelector('[data-part="what"]').textContent = carry?.says;
    button.hidden = !carry;
    /** @type {HTMLElement} */ (root.querySelector('[data-part="none"]')).hidden = !button.hidden; // one or the other: nothing below moves
  }
  const take = () => {
    location.replace(carryFragment(carry, draft));
    root.hidden ||= Boolean(names);
  };
  button?.addEventListener('click', take);
  return () => button?.removeEventListener('click', take);
}
