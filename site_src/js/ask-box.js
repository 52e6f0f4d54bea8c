// One question in a box over the page: a second press past a stop, a reason, a figure on our own keys. Answers with a
// text, or with null when the maker went back.

import { Keypad } from './keypad.js';

export class AskBox {
  #dialog;
  #keypad;
  #value = '';
  /** @type {((answer: string|null) => void)|null} */
  #answer = null;

  /** @param {HTMLDialogElement} dialog @param {AbortSignal} signal */
  constructor(dialog, signal) {
    this.#dialog = dialog;
    this.#keypad = new Keypad(this.#part('pad'), signal);
    dialog.addEventListener('close', () => this.#closed(), { signal });
    this.#part('dialog-input').addEventListener('input', (event) => this.#take(/** @type {HTMLInputElement} */ (event.target).value), { signal });
  }

  /**
   * A second press, in another half of the screen than the first.
   * @param {{say: string, yes: string, no: string}} words @param {HTMLElement} pressed
   */
  confirm({ say, yes, no }, pressed) {
    this.#show(say, { yes, no });
    const { top, bottom } = pressed.getBoundingClientRect();
    this.#dialog.dataset.place = top + bottom < innerHeight ? 'low' : 'high';
    return this.#open();
  }

  /** A reason. @param {string} say @param {{label: string, value: string}[]} choices @param {string} no */
  reason(say, choices, no) {
    this.#show(say, { no, own: true, choices });
    return this.#open();
  }

  /** A figure on our own keys. @param {string} say @param {string} unit @param {string} no */
  figure(say, unit, no) {
    this.#show(say, { no });
    this.#toggle(true);
    const answer = this.#open();
    this.#keypad.ask({ label: say, unit, start: '', step: '1' }, (text) => {
      this.#value = text ?? '';
      this.#dialog.close(text === null ? 'no' : 'ok');
    });
    return answer;
  }

  /** The keys bring their own label and their own way back. @param {boolean} keys */
  #toggle(keys) {
    this.#part('dialog-title').classList.toggle('visually-hidden', keys);
    this.#part('dialog-no').hidden = keys;
  }

  close() {
    if (this.#dialog.open) this.#dialog.close('no');
  }

  /**
   * @param {string} say
   * @param {{yes?: string, no: string, own?: boolean, choices?: {label: string, value: string}[]}} what
   */
  #show(say, { yes = '', no, own = false, choices = [] }) {
    delete this.#dialog.dataset.place;
    this.#toggle(false);
    this.#part('dialog-title').textContent = say;
    this.#part('dialog-yes').hidden = !yes;
    this.#part('dialog-yes').textContent = yes;
    /** @type {HTMLButtonElement} */ (this.#part('dialog-yes')).disabled = !yes;
    this.#part('dialog-no').textContent = no;
    this.#part('dialog-own').hidden = !own;
    this.#part('dialog-ok').hidden = !own;
    /** @type {HTMLInputElement} */ (this.#part('dialog-input')).value = '';
    this.#part('dialog-choices').replaceChildren(...choices.map(({ label, value }) => this.#choice(label, value)));
    this.#take('');
  }

  /** @param {string} label @param {string} value */
  #choice(label, value) {
    const button = /** @type {HTMLButtonElement} */ (this.#part('dialog-no').cloneNode());
    button.removeAttribute('data-part');
    button.className = 'button press';
    button.value = 'choice';
    button.textContent = label;
    button.addEventListener('click', () => (this.#value = value));
    return button;
  }

  /** @param {string} text */
  #take(text) {
    this.#value = text;
    /** @type {HTMLButtonElement} */ (this.#part('dialog-ok')).disabled = !text.trim();
  }

  #open() {
    this.#dialog.returnValue = '';
    this.#dialog.showModal();
    return new Promise((/** @type {(answer: string|null) => void} */ resolve) => (this.#answer = resolve));
  }

  #closed() {
    this.#keypad.close();
    const answers = { yes: 'yes', ok: this.#value, choice: this.#value };
    const answer = answers[/** @type {keyof typeof answers} */ (this.#dialog.returnValue)] ?? null;
    this.#answer?.(answer);
    this.#answer = null;
  }

  /** @param {string} name */
  #part(name) {
    return /** @type {HTMLElement} */ (this.#dialog.querySelector(`[data-part="${name}"]`));
  }
}
