// Home: the way back to where the maker was last: to a run under way before anything else, for a clock may be running.

import { glue } from './spell.js';

/** A run left open longer ago than this is no longer under way, ms. */
const UNDER_WAY = 12 * 3600e3;

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const records = [...(await app.store.all('drafts')), ...(await app.store.all('runs'))].filter((record) => record.path && record.at);
  const rank = (/** @type {any} */ record) => record.at + (record.open && Date.now() - record.at < UNDER_WAY ? UNDER_WAY : 0);
  const last = records.sort((one, other) => rank(other) - rank(one))[0];
  const part = (/** @type {string} */ name) => /** @type {HTMLElement} */ (root.querySelector(`[data-part="${name}"]`));
  if (last) {
    const link = /** @type {HTMLAnchorElement} */ (part('link'));
    link.href = new URL(last.path, app.root).href;
    part('name').textContent = last.name;
    part('what').textContent = glue(last.what ?? '');
    const clock = last.open && last.screen?.clocks?.find((/** @type {any} */ one) => one.ends);
    const left = clock && clock.ends - Date.now() / 1000;
    if (clock) part('left').textContent = glue(`${left < 0 ? clock.overdue_label : clock.label} ${Math.ceil(Math.abs(left) / 60)} min`);
    part('none').hidden = true;
    link.hidden = false;
  }
  return () => {};
}
