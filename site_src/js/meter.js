// Vibration by the phone's motion sensor, after the maker agrees. What is felt is collected here; calc makes the figures of it.

import * as wakeLock from './device/wake-lock.js';

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const ending = new AbortController();
  const { signal } = ending;
  const part = (/** @type {string} */ name) => /** @type {HTMLButtonElement} */ (root.querySelector(`[data-part="${name}"]`));
  const [go, take, said] = ['go', 'take', 'said'].map(part);
  /** @type {Record<string, string>} */
  let found = {};

  const measure = async () => {
    const motion = /** @type {any} */ (window).DeviceMotionEvent;
    const agreed = motion && (!motion.requestPermission || (await motion.requestPermission().catch(() => '')) === 'granted');
    said.textContent = agreed ? said.dataset.wait : said.dataset.none;
    if (!agreed || signal.aborted) return;
    go.disabled = true;
    take.disabled = true;
    wakeLock.start();
    /** @type {object[]} */
    const events = [];
    const hear = (/** @type {DeviceMotionEvent} */ { timeStamp, accelerationIncludingGravity: felt }) => {
      if (felt && felt.x !== null) events.push({ at: timeStamp / 1000, x: felt.x, y: felt.y, z: felt.z });
    };
    window.addEventListener('devicemotion', hear, { signal });
    await new Promise((done) => setTimeout(done, 1000 * Number(root.dataset.seconds)));
    window.removeEventListener('devicemotion', hear);
    if (signal.aborted) return;
    wakeLock.stop();
    const screen = await app.desk.call('run', { id: 'vibration', inputs: {}, units: app.units, events, now: 0 }, { signal }).catch(/** @returns {null} */ () => null);
    if (signal.aborted) return;
    go.disabled = false;
    found = screen?.take ?? {};
    said.textContent = screen?.say ?? said.dataset.none;
    take.disabled = !found.felt;
  };
  const over = () => {
    for (const [name, text] of Object.entries(found)) {
      const input = /** @type {HTMLInputElement} */ (document.getElementById(`f-${name}`));
      input.value = text;
      input.dispatchEvent(new Event('input', { bubbles: true }));
    }
    said.textContent = said.dataset.taken;
    take.disabled = true;
  };
  go.addEventListener('click', measure, { signal });
  take.addEventListener('click', over, { signal });
  return () => {
    ending.abort();
    wakeLock.stop();
  };
}
