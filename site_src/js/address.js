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

/** The address of another question with what an answer hands to it. @param {{to: string, inputs: Record<string, string>}} carry @param {System} units */
export function carryAddress({ to, inputs }, units) {
  return new URL(`../${to}/#${new URLSearchParams({ units, ...inputs, added: 'yes' })}`, location.href).href;
}

/**
 * What an address carries, or null when it carries nothing. What is `added` is laid over what was typed there before.
 * @param {string} fragment @param {string[]} names
 */
export function readFragment(fragment, names) {
  if (!fragment.includes('=')) return null;
  const query = new URLSearchParams(fragment.slice(1));
  const units = /** @type {System} */ (query.get('units') === 'imperial' ? 'imperial' : 'metric');
  const opposite = /** @type {System} */ (units === 'metric' ? 'imperial' : 'metric');
  const other = (query.get('other') ?? '').split(' ');
  /** @type {[string, Typed][]} */
  const inputs = names
    .filter((name) => query.get(name))
    .map((name) => [name, { typed: query.get(name).slice(0, 200), units: other.includes(name) ? opposite : units }]);
  return inputs.length ? { inputs: Object.fromEntries(inputs), units, added: query.has('added') } : null;
}
