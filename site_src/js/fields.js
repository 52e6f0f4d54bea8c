// One field on the page: what was typed in it and under which units, whether it is asked, and its message.

/** @typedef {'metric'|'imperial'} System */
/** `from` is the question that handed it on, until the maker types there. @typedef {{typed: string, units: System, from?: string}} Typed */

export class Field {
  /** What the maker typed and the units shown at the time; null while the default stands in. @type {Typed|null} */
  origin = null;
  /** The maker has left this field, so its message may be shown. */
  left = false;
  /** The unit was pressed: the field keeps the full keyboard while the page is open. */
  #allKeys = false;
  #error;
  #empty;

  /** @param {HTMLElement} element */
  constructor(element) {
    this.element = element;
    this.name = element.dataset.field;
    /** @type {[string, string[]][]} */
    this.when = JSON.parse(element.dataset.when);
    this.default = element.dataset.default ?? '';
    this.inputs = /** @type {HTMLInputElement[]} */ ([...element.querySelectorAll('input, select')]);
    this.isPick = this.inputs[0].tagName === 'SELECT';
    this.isChoice = element.dataset.type === 'choice';
    this.#error = /** @type {HTMLElement} */ (element.querySelector('.field__error'));
    this.#empty = element.querySelector('[data-part="empty"]');
    element.querySelector('[data-part="unit"]')?.addEventListener('click', () => this.#takeAllKeys());
    if (this.isChoice) this.show('');
  }

  /** The text in the control. */
  get text() {
    if (this.isChoice && !this.isPick) return this.inputs.find((input) => input.checked)?.value ?? '';
    return this.inputs[0].value.trim();
  }

  get label() {
    return this.element.querySelector('.field__label').textContent;
  }

  /** Label and entry in words. */
  reads() {
    const { label } = this;
    if (this.isPick) return { label, text: this.element.querySelector('[data-part="picked"]').textContent };
    if (this.isChoice) return { label, text: this.target.parentElement.querySelector('.choice__label').textContent };
    const unit = this.#unit?.textContent ?? '';
    return { label, text: hasUnit(this.text) ? this.text : `${this.text} ${unit}`.trim() };
  }

  get #unit() {
    return /** @type {HTMLElement|null} */ (this.element.querySelector('[data-part="unit-text"]'));
  }

  /** The control that takes the focus. */
  get target() {
    return this.inputs.find((input) => input.checked) ?? this.inputs[0];
  }

  /** The maker changed the control. @param {System} units */
  take(units) {
    this.origin = this.text ? { typed: this.text, units } : null;
    this.#dress();
  }

  /** Put a text into the control; an empty one shows the default of a choice. @param {string} text */
  show(text) {
    const wanted = this.isChoice ? text || this.default : text;
    if (this.isChoice && !this.isPick) for (const input of this.inputs) input.checked = input.value === wanted;
    else this.inputs[0].value = wanted;
    this.#dress();
  }

  /** Show what was typed; under the other units with its own unit, until calc has put it into these. @param {System} units */
  showOrigin(units) {
    const { typed = '', units: own = units } = this.origin ?? {};
    const unit = this.#unit?.dataset[own] ?? '';
    this.show(own === units || hasUnit(typed) ? typed : `${typed} ${unit}`.trim());
  }

  /** What a choice shows of itself: the option picked, and that it is a preset for as long as nobody chose. */
  #dress() {
    const preset = /** @type {HTMLElement} */ (this.element.querySelector('[data-part="preset"]'));
    if (preset) preset.style.visibility = this.origin ? 'hidden' : 'visible';
    this.element.toggleAttribute('data-own-unit', !this.isChoice && hasUnit(this.text));
    if (!this.isPick) return;
    const option = /** @type {HTMLSelectElement} */ (/** @type {unknown} */ (this.inputs[0])).selectedOptions[0];
    this.element.querySelector('[data-part="picked"]').textContent = option?.dataset.label ?? '';
    const hint = this.element.querySelector('[data-part="picked-hint"]');
    if (hint) hint.textContent = option?.dataset.hint ?? '';
  }

  /** @param {System} units */
  showUnits(units) {
    for (const part of /** @type {NodeListOf<HTMLElement>} */ (this.element.querySelectorAll('[data-metric]'))) {
      part.textContent = part.dataset[units];
    }
    const [input] = this.inputs;
    if ('fractions' in input.dataset && !this.#allKeys) input.inputMode = units === 'imperial' ? 'text' : 'decimal';
  }

  /** Fractions and other units need letters: a field that has the focus gives it up first, or the keys would stay as they are. */
  #takeAllKeys() {
    const [input] = this.inputs;
    this.#allKeys = true;
    input.blur();
    input.inputMode = 'text';
    input.focus();
  }

  /** Whether the field is asked, and show or hide it so. @param {Map<string, string>} choices those made so far */
  ask(choices) {
    const asked = this.when.every(([name, values]) => values.includes(choices.get(name) ?? ''));
    this.element.hidden = !asked;
    if (asked && this.isChoice && this.text) choices.set(this.name, this.text);
    else choices.delete(this.name);
    return asked;
  }

  /** Show what is wrong, or again what an empty field means. @param {string} message */
  say(message) {
    this.#error.querySelector('[data-part="error"]').textContent = message;
    this.#error.hidden = !message;
    this.#empty.classList.toggle('visually-hidden', Boolean(message));
    this.element.toggleAttribute('data-wrong', Boolean(message));
    for (const input of this.inputs) {
      if (message) input.setAttribute('aria-invalid', 'true');
      else input.removeAttribute('aria-invalid');
    }
  }
}

/** Whether a text ends in a unit. @param {string} text */
function hasUnit(text) {
  return /[a-z"']\s*$/i.test(text);
}
