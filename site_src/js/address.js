// An answer as an address: what was typed goes into the part after '#', which never leaves the device by itself.
// `units` is what the page shows; a field that was typed under the other system is named in `other`.

/** @typedef {import('./fields.js').Typed} Typed @typedef {import('./fields.js').System} System */

/** @param {Map<string, Typed>} inputs @param {System} units */
export function writeFragment(inputs, units) {
  const query = new URLSearchParams({ units });
  const other = [...inputs].filter(([, typed]) => typed.units !== units).map(([name]) => name);
  for (const [name, { typed }] of inputs) query.set(name, typed);
  if (other.length) query.set('other', other.join(' '));
  return `#${query}`;
}

/**
 * What an answer hands to another question, as a fragment: all that it has to say there. `added` names the question that says it.
 * @param {{inputs: Record<string, string>, leaves: string[]}} carry @param {{id: string, units: System}} answer
 */
export function carryFragment({ inputs, leaves }, { id, units }) {
  return `#${new URLSearchParams({ units, ...inputs, added: id, leaves: leaves.join(' ') })}`;
}

/**
 * What was typed at a question, with what another one hands to it laid over: what that one handed before, and has no word of now, goes.
 * @param {Record<string, Typed>|undefined} kept @param {{inputs: Record<string, Typed>, from: string|null, leaves: string[]}} given
 */
export function laidOver(kept, { inputs, from, leaves }) {
  const stays = Object.entries(kept ?? {}).filter(([name, typed]) => typed.from !== from || leaves.includes(name));
  return { ...Object.fromEntries(stays), ...inputs };
}

/** What an address carries, or null when it carries nothing. @param {string} fragment @param {string[]} names */
export function readFragment(fragment, names) {
  if (!fragment.includes('=')) return null;
  const query = new URLSearchParams(fragment.slice(1));
  const units = /** @type {System} */ (query.get('units') === 'imperial' ? 'imperial' : 'metric');
  const opposite = /** @type {System} */ (units === 'metric' ? 'imperial' : 'metric');
  const [other, leaves] = ['other', 'leaves'].map((name) => (query.get(name) ?? '').split(' '));
  const from = query.get('added');
  /** @type {[string, Typed][]} */
  const inputs = names
    .filter((name) => query.get(name))
    .map((name) => [name, { typed: query.get(name).slice(0, 200), units: other.includes(name) ? opposite : units, ...(from && { from }) }]);
  return inputs.length || from ? { inputs: Object.fromEntries(inputs), units, from, leaves } : null;
}
