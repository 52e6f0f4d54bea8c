// The summary of what is wrong, shown on asking for the answer; and the question about a suspected slip.

/** @typedef {{field: string, message: string, choices?: {label: string, value: string}[]}} Told */

export class ErrorSummary {
  #box;
  #list;
  #show;

  /** @param {HTMLElement} box @param {(field: string) => void} show brings a field into view and focuses it */
  constructor(box, show) {
    this.#box = box;
    this.#list = box.querySelector('[data-list="errors"]');
    this.#show = show;
    box.addEventListener('click', (event) => {
      const link = /** @type {HTMLElement} */ (event.target).closest('a');
      if (!link) return;
      event.preventDefault();
      this.#show(link.dataset.to);
    });
  }

  /** Show the errors and take the focus. @param {Told[]} errors */
  open(errors) {
    this.fill(errors);
    this.#box.hidden = errors.length === 0;
    if (errors.length) {
      this.#box.focus({ preventScroll: true });
      this.#box.scrollIntoView({ block: 'start' });
    }
  }

  /** Keep the list true while it is open; it closes by itself when nothing is left. @param {Told[]} errors */
  fill(errors) {
    this.#list.replaceChildren(
      ...errors.map(({ field, message }) => {
        const item = document.createElement('li');
        const link = document.createElement('a');
        link.href = field ? `#f-${field}` : '#main';
        link.dataset.to = field;
        link.textContent = message;
        item.append(link);
        return item;
      }),
    );
    if (!errors.length) this.#box.hidden = true;
  }

  get isOpen() {
    return !this.#box.hidden;
  }
}

export class Ask {
  #box;
  #text;
  #list;
  #pick;
  #shown = '';

  /** @param {HTMLElement} box @param {(field: string, value: string, keep: boolean) => void} pick */
  constructor(box, pick) {
    this.#box = box;
    this.#text = box.querySelector('[data-part="ask-text"]');
    this.#list = box.querySelector('[data-list="ask"]');
    this.#pick = pick;
  }

  /** Put the first open question, or close. @param {(Told & {keep?: string})|undefined} query */
  put(query) {
    const key = query ? `${query.field} ${query.message}` : '';
    if (key === this.#shown) return;
    this.#shown = key;
    this.#box.hidden = !query;
    if (!query) return;
    this.#text.textContent = query.message;
    const buttons = query.choices.map(({ label, value }) => this.#button('ask', label, () => this.#pick(query.field, value, false)));
    if (query.keep) buttons.push(this.#button('keep', query.keep, () => this.#pick(query.field, query.keep, true)));
    this.#list.replaceChildren(...buttons);
  }

  get element() {
    return this.#box;
  }

  get text() {
    return this.#box.hidden ? '' : this.#text.textContent;
  }

  focus() {
    this.#box.focus();
  }

  /** @param {string} template @param {string} label @param {() => void} action */
  #button(template, label, action) {
    const source = /** @type {HTMLTemplateElement} */ (this.#box.querySelector(`[data-template="${template}"]`));
    const button = /** @type {HTMLButtonElement} */ (source.content.firstElementChild.cloneNode(true));
    button.textContent = button.dataset.keep ? button.dataset.keep.replace('{}', label) : label;
    button.addEventListener('click', action);
    return button;
  }
}
