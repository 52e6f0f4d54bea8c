// The figures that a checklist goes by: what was typed under its own question, or handed over in the address by the answer whose
// button led here, which is kept there; and where that is empty, or older, what a weighing plan knows.

import { laidOver, readFragment } from './address.js';

/** @typedef {import('./fields.js').Typed} Typed */
/**
 * What the answer of another question hands on: as it was last worked out there.
 * @param {any} draft of that question @param {string} to
 * @returns {Record<string, Typed>}
 */
function handed(draft, to) {
  const { inputs = {} } = draft?.carries?.find((/** @type {any} */ carry) => carry.to === to) ?? {};
  return Object.fromEntries(Object.entries(inputs).map(([name, typed]) => [name, { typed, units: draft.units, from: draft.id }]));
}

/**
 * @param {import('./app.js').App} app
 * @param {DOMStringMap} data of the element: data-own, data-names, data-from
 * @returns {Promise<Record<string, Typed>>}
 */
export async function planFigures(app, data) {
  const [own, other] = await Promise.all([app.store.get('drafts', data.own), app.store.get('drafts', data.from)]);
  const given = readFragment(location.hash, data.names.split(' '));
  const inputs = given ? laidOver(own?.inputs, given) : own?.inputs;
  if (given) {
    app.store.put('drafts', { ...own, id: data.own, inputs });
    history.replaceState(history.state, '', location.pathname);
  }
  const typed = Object.entries(inputs ?? {}).filter(([, entry]) => entry.from !== data.from);
  return { ...inputs, ...handed(other, data.own), ...Object.fromEntries(typed) };
}
