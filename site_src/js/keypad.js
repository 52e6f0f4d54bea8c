// Our own keys for a figure, large enough for gloves; the phone's keyboard never opens.

/** @typedef {{label: string, unit: string, start: string, step: string}} Ask */

export class Keypad {
  #panel;
  #text = '';
  #step = '1';
  /** Until a key is pressed the figure shown is a proposal: the first digit takes its place. */
  #fresh = true;
  /** @type {((text: string|null) => void)|null} */
  #done = null;

  /** @param {HTMLElement} panel @param {AbortSignal} signal */
  constructor(panel, signal) {
    this.#panel = panel;
    panel.addEventListener('click', (event) => this.#pressed(/** @type {HTMLElement} */ (event.target).closest('[data-key]')), { signal });
    panel.addEventListener('keydown', (event) => this.#typed(event), { signal });
  }

  get open() {
    return !this.#panel.hidden;
  }

  /** Ask for a figure. @param {Ask} ask @param {(text: string|null) => void} done with null when the maker went back */
  ask({ label, unit, start, step }, done) {
    this.#done = done;
    this.#step = step;
    this.#part('pad-label').textContent = label;
    this.#part('pad-unit').textContent = unit;
    this.#put(start, true);
    this.#panel.hidden = false;
    /** @type {HTMLElement} */ (this.#panel.querySelector('[data-key="1"]')).focus({ preventScroll: true });
  }

  close() {
    this.#panel.hidden = true;
    this.#done = null;
  }

  /** @param {Element|null} button */
  #pressed(button) {
    if (button) this.#take(/** @type {HTMLElement} */ (button).dataset.key);
  }

  /** A keyboard types into the keys as well. @param {KeyboardEvent} event */
  #typed(event) {
    const key = event.key === 'Backspace' ? 'back' : event.key === ',' ? '.' : event.key;
    if (!/^[\d.]$|^back$/.test(key)) return;
    event.preventDefault();
    this.#take(key);
  }

  /** @param {string} key */
  #take(key) {
    if (key === 'ok') this.#done?.(this.#text);
    else if (key === 'cancel') this.#done?.(null);
    else if (key === 'up' || key === 'down') this.#put(stepped(this.#text, this.#step, key === 'up' ? 1 : -1), false);
    else if (key === 'back') this.#put(this.#fresh ? '' : this.#text.slice(0, -1), false);
    else {
      const before = this.#fresh ? '' : this.#text;
      if (key !== '.' || !before.includes('.')) this.#put((before + key).slice(0, 9), false);
    }
  }

  /** @param {string} text @param {boolean} fresh */
  #put(text, fresh) {
    this.#text = text;
    this.#fresh = fresh;
    const figure = this.#part('pad-figure');
    figure.textContent = text || '–';
    figure.parentElement.style.setProperty('--chars', String(text.length || 1));
    /** @type {HTMLButtonElement} */ (this.#panel.querySelector('[data-key="ok"]')).disabled = !/\d/.test(text);
  }

  /** @param {string} name */
  #part(name) {
    return /** @type {HTMLElement} */ (this.#panel.querySelector(`[data-part="${name}"]`));
  }
}

/** The figure one step of the scale on, written as the scale writes it. @param {string} text @param {string} step @param {number} way */
function stepped(text, step, way) {
  const size = Number(step);
  const decimals = step.split('.')[1]?.length ?? 0;
  return (Math.round(Number(text || 0) / size + way) * size).toFixed(decimals);
}
