// The turning card: what How fast? says of the piece last entered, to be read at the lathe. Nothing on it is pressed.

import * as wakeLock from './device/wake-lock.js';
import { glue } from './spell.js';

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  let gone = false;
  const part = (/** @type {string} */ name) => /** @type {HTMLElement} */ (root.querySelector(`[data-part="${name}"]`));
  const word = (/** @type {string} */ name, key = 'none') => part(name).dataset[key];
  const show = (/** @type {Record<string, string|string[]>} */ { tone, ...card }) => {
    if (gone) return;
    for (const [name, value] of Object.entries(card)) {
      if (typeof value === 'string') part(name).textContent = glue(value);
      else part(name).replaceChildren(...value.map((text) => Object.assign(document.createElement('li'), { textContent: glue(text) })));
    }
    if (tone) root.dataset.tone = String(tone);
    const text = String(card.text ?? '');
    part('text').style.setProperty('--chars', String(text.length));
    root.toggleAttribute('data-words', !/\d/.test(text));
    // The card fills the screen from the first look on: nobody scrolls with a hand on the tool.
    root.scrollIntoView({ block: 'start', behavior: 'instant' });
  };
  const awake = async () => {
    const on = await wakeLock.start();
    if (gone) wakeLock.stop();
    else part('awake').textContent = word('awake', on ? 'on' : 'off');
  };
  const ask = async () => {
    const { question } = root.dataset;
    const draft = await app.store.get('drafts', question);
    if (!draft) return show({ stage: word('stage'), say: [word('say')] });
    const { inputs, confirmed, at } = draft;
    const { extra, text } = await app.desk.call('answer', { id: question, inputs, units: app.units, confirmed });
    const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
    show(extra.card ? { ...extra.card, at: `${word('at', 'word')} ${when.format(at)}` } : { stage: word('stage'), say: [text] });
  };
  awake();
  ask().catch(() => show({ stage: word('stage', 'failed') }));
  return () => {
    gone = true;
    wakeLock.stop();
  };
}
