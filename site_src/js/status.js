// The row under the bar. Its words stand in the page as data- attributes; its place is reserved, so nothing moves.

export class Status {
  #row;
  #desk;
  #note;
  #update;

  /** @param {HTMLElement} row */
  constructor(row) {
    this.#row = row;
    this.#desk = row.querySelector('[data-part="desk"]');
    this.#note = row.querySelector('[data-part="note"]');
    this.#update = /** @type {HTMLButtonElement} */ (row.querySelector('[data-part="update"]'));
  }

  /** Say how the arithmetic is. @param {'waking'|'ready'|'failed'} state @param {string} [reason] a key of the row's texts */
  desk(state, reason = '') {
    this.#row.dataset.state = state;
    this.#desk.textContent = this.#row.dataset[state];
    if (state === 'failed') this.#note.textContent = this.#row.dataset[reason] ?? '';
    else if (this.#row.dataset.told) this.kept(/** @type {any} */ (this.#row.dataset.told));
  }

  /** How far the start is. @param {{done: number, of: number}} progress */
  progress({ done, of }) {
    const percent = Math.round((100 * done) / of);
    if (this.#row.dataset.state === 'waking') this.#desk.textContent = `${this.#row.dataset.waking} ${percent} %`;
  }

  /** Say once what this device keeps. @param {'offline'|'incomplete'|'notKept'} kept */
  kept(kept) {
    this.#row.dataset.told = kept;
    if (this.#row.dataset.state !== 'failed') this.#note.textContent = this.#row.dataset[kept];
  }

  /** A write to this device failed. */
  saveFailed() {
    this.#note.textContent = this.#row.dataset.saveFailed;
  }

  /** Offer the new version; the maker decides when. @param {() => void} take */
  offerUpdate(take) {
    this.#note.textContent = '';
    this.#update.hidden = false;
    this.#update.onclick = () => {
      this.#update.disabled = true;
      take();
    };
  }

  /** One of the row's texts. @param {string} key */
  text(key) {
    return this.#row.dataset[key] ?? '';
  }
}
