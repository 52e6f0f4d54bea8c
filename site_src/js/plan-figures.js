// The figures that a checklist goes by: what was typed under its own question, or handed over in the address by the answer whose
// button led here, which is kept there; and where that is empty, what a weighing plan already knows.

import { laidOver, readFragment } from './address.js';

/** @typedef {import('./fields.js').Typed} Typed */
/** @typedef {{from: string, to: string, under: [string, string]|null}} Prefill */

/**
 * What another question's draft can fill in. A value counts only under the choice it was asked under.
 * @param {Record<string, Typed>|undefined} inputs the other draft
 * @param {Prefill[]} map
 * @returns {Record<string, Typed>}
 */
export function prefilled(inputs, map) {
  /** @type {Record<string, Typed>} */
  const found = {};
  for (const { from, to, under } of map) {
    const stands = !under || !inputs?.[under[0]] || inputs[under[0]].typed === under[1];
    if (inputs?.[from]?.typed && stands) found[to] = inputs[from];
  }
  return found;
}

/**
 * @param {import('./app.js').App} app
 * @param {DOMStringMap} data of the element: data-own, data-names, data-from, data-prefill
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
  return { ...prefilled(other?.inputs, JSON.parse(data.prefill)), ...inputs };
}
