// The form of a question: keeps what was typed, asks calc after each change, shows what comes back.

import { laidOver, readFragment, writeFragment } from './address.js';
import { AnswerView } from './answer.js';
import { Ask, ErrorSummary } from './errors.js';
import { Field } from './fields.js';
import { glue } from './spell.js';

/** @typedef {import('./fields.js').System} System @typedef {import('./fields.js').Typed} Typed */

/** Pause after a keystroke before calc is asked, in ms. */
const PAUSE = 60;
/** Pause after a keystroke before the maker is asked about a slip: a number may still be growing. */
const GROWING = 900;
/** An answer that takes longer than this is said to be in the making, and the figure before it is taken off, in ms. */
const SLOW = 250;

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const question = new QuestionForm(root, app);
  await question.start();
  return () => question.stop();
}

class QuestionForm {
  #app;
  #root;
  #id;
  #form;
  /** @type {Map<string, Field>} */
  #fields;
  #summary;
  #ask;
  #answer;
  #words;
  #figure;
  /** Slips the maker said yes to: field and the text it was said of. @type {Record<string, string>} */
  #confirmed = {};
  /** @type {any} */
  #reply = null;
  #submitted = false;
  /** The last request ended in a fault of ours. */
  #fault = false;
  #timer = 0;
  /** The field being typed in, until it is left or the keys rest. */
  #growing = '';
  #growingTimer = 0;
  #busy = false;
  #slow = false;
  #again = false;
  /** Share done of an answer that takes its time. */
  #share = 0;
  /** Ends the question that is with the desk. */
  #dropping = new AbortController();
  /** What was cleared, to be put back. @type {any} */
  #cleared = null;
  #ending = new AbortController();

  /** @param {HTMLElement} root @param {import('./app.js').App} app */
  constructor(root, app) {
    const part = (/** @type {string} */ name) => /** @type {HTMLElement} */ (root.querySelector(`[data-part="${name}"]`));
    this.#app = app;
    this.#root = root;
    this.#id = root.dataset.question;
    this.#form = root.querySelector('form');
    this.#fields = new Map([...root.querySelectorAll('[data-field]')].map((element) => {
      const field = new Field(/** @type {HTMLElement} */ (element));
      return [field.name, field];
    }));
    this.#summary = new ErrorSummary(part('summary'), (name) => this.#goTo(name));
    this.#ask = new Ask(part('ask'), (...picked) => this.#picked(...picked));
    this.#answer = new AnswerView(part('reserve'), { title: root.dataset.title, address: () => this.#address() });
    this.#words = part('readout-words');
    this.#figure = part('readout-what');
  }

  async start() {
    const { signal } = this.#ending;
    const given = readFragment(location.hash, [...this.#fields.keys()]);
    const kept = given && !given.from ? null : await this.#app.store.get('drafts', this.#id);
    const draft = given ? { ...given, inputs: laidOver(kept?.inputs, given) } : kept;
    if (signal.aborted) return;
    if (given && given.units !== this.#app.units) this.#app.setUnits(given.units);
    this.#showUnits();
    if (draft) this.#restore(draft);
    this.#askFields();
    this.#form.dataset.ready = '';
    this.#form.addEventListener('input', (event) => this.#typed(event), { signal });
    this.#form.addEventListener('focusout', (event) => this.#left(event), { signal });
    this.#form.addEventListener('submit', (event) => this.#submit(event), { signal });
    this.#watchAnswer(signal);
    this.#form.querySelector('[data-do="clear"]').addEventListener('click', () => this.#clear(), { signal });
    window.addEventListener('hashchange', () => this.#addressed(), { signal });
    this.#app.desk.addEventListener('state', () => this.#deskChanged(), { signal });
    this.#showState();
    if (draft) this.#switchTo(this.#app.units);
    if (given?.from) this.#own();
    const answered = this.#work();
    if (this.#app.desk.state === 'ready') await answered; // then the page is as long as the maker left it
  }

  stop() {
    clearTimeout(this.#timer);
    clearTimeout(this.#growingTimer);
    this.#ending.abort();
    this.#dropping.abort();
  }

  /** The figure at the bottom goes away while the answer itself is on the screen. @param {AbortSignal} signal */
  #watchAnswer(signal) {
    const readout = this.#form.querySelector('[data-part="readout"]');
    const watcher = new IntersectionObserver(
      ([{ isIntersecting }]) => readout.toggleAttribute('data-away', isIntersecting && !this.#answer.element.hidden),
      { rootMargin: '0px 0px -45% 0px' },
    );
    watcher.observe(this.#answer.element);
    signal.addEventListener('abort', () => watcher.disconnect());
  }

  // What was typed

  /** @param {Event} event */
  #typed({ target }) {
    const input = /** @type {HTMLInputElement} */ (target);
    if (input.name === 'units') {
      this.#app.setUnits(/** @type {System} */ (input.value));
      this.#showUnits();
      this.#switchTo(this.#app.units).then(() => this.#changed());
      return;
    }
    const field = this.#fields.get(input.name);
    if (!field) return;
    field.take(this.#app.units);
    if (field.isChoice) field.left = true;
    else this.#grows(field.name);
    this.#offerClear(null);
    this.#askFields();
    this.#changed();
  }

  /** @param {FocusEvent} event */
  #left({ target, relatedTarget }) {
    const field = this.#fields.get(/** @type {HTMLInputElement} */ (target).name);
    if (!field?.origin || field.element.contains(/** @type {Node|null} */ (relatedTarget))) return;
    field.left = true;
    this.#grows('');
    this.#showMessages();
  }

  /** @param {string} name */
  #grows(name) {
    this.#growing = name;
    clearTimeout(this.#growingTimer);
    if (name) this.#growingTimer = window.setTimeout(() => {
      this.#growing = '';
      this.#showMessages();
      this.#showState();
    }, GROWING);
  }

  #changed() {
    this.#own();
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => this.#work(), PAUSE);
  }

  /** From now on it stands in the draft, and the address says no more of it. */
  #own() {
    if (location.hash.includes('=')) history.replaceState(history.state, '', location.pathname + location.search);
    this.#keep();
  }

  /** Fields that are asked and were typed in, in their order. @returns {Map<string, Typed>} */
  #inputs() {
    const asked = [...this.#fields.values()].filter((field) => !field.element.hidden && field.origin);
    return new Map(asked.map((field) => [field.name, field.origin]));
  }

  /** What was entered, as it reads on the page. */
  #given() {
    const names = [...this.#inputs().keys()];
    return names.map((name) => this.#fields.get(name).reads());
  }

  /** Everything typed, also in fields that are not asked at the moment. */
  #record() {
    const typed = [...this.#fields.values()].filter((field) => field.origin);
    return { inputs: Object.fromEntries(typed.map((field) => [field.name, field.origin])), confirmed: this.#confirmed };
  }

  #keep() {
    const record = this.#record();
    if (Object.keys(record.inputs).length === 0) {
      this.#app.store.remove('drafts', this.#id);
      return;
    }
    const { headline, carries, units } = this.#reply ?? {};
    const what = headline ? `${headline.text} ${headline.unit}`.trim() : '';
    this.#app.store.put('drafts', { id: this.#id, name: this.#root.dataset.title, path: `${this.#id}/`, what, carries, units, at: Date.now(), ...record });
  }

  /** @param {{inputs: Record<string, Typed>, confirmed?: Record<string, string>}} record */
  #restore({ inputs, confirmed = {} }) {
    this.#confirmed = confirmed;
    for (const field of this.#fields.values()) {
      field.origin = inputs[field.name] ?? null;
      field.left = Boolean(field.origin);
      field.showOrigin(this.#app.units);
    }
    const more = /** @type {HTMLDetailsElement} */ (this.#root.querySelector('[data-part="more"]'));
    if (more?.querySelector('[data-field]') && [...this.#fields.values()].some((f) => f.origin && more.contains(f.element))) more.open = true;
  }

  #addressed() {
    const given = readFragment(location.hash, [...this.#fields.keys()]);
    if (!given) return;
    this.#app.setUnits(given.units);
    this.#showUnits();
    this.#restore(given.from ? { ...this.#record(), inputs: laidOver(this.#record().inputs, given) } : given);
    if (given.from) this.#own();
    this.#askFields();
    this.#switchTo(given.units).then(() => this.#work());
  }

  #address() {
    return new URL(writeFragment(this.#inputs(), this.#app.units), location.href).href;
  }

  #clear() {
    if (this.#cleared) {
      this.#restore(this.#cleared);
      this.#offerClear(null);
    } else {
      const record = this.#record();
      this.#restore({ inputs: {} });
      this.#offerClear(Object.keys(record.inputs).length ? record : null);
    }
    this.#submitted = false;
    this.#askFields();
    this.#switchTo(this.#app.units).then(() => this.#changed());
  }

  /** @param {any} record what can be put back */
  #offerClear(record) {
    this.#cleared = record;
    const button = /** @type {HTMLElement} */ (this.#form.querySelector('[data-do="clear"]'));
    button.textContent = record ? button.dataset.restore : button.dataset.clear;
  }

  // Units

  #showUnits() {
    const { units } = this.#app;
    for (const input of /** @type {NodeListOf<HTMLInputElement>} */ (this.#form.querySelectorAll('[name="units"]'))) {
      input.checked = input.value === units;
    }
    for (const field of this.#fields.values()) field.showUnits(units);
    this.#root.dataset.units = units;
  }

  /** Show every text in these units; what was typed is kept, so going to and fro never drifts. @param {System} units */
  async #switchTo(units) {
    const { inputs } = this.#record();
    for (const field of this.#fields.values()) if (field.origin) field.showOrigin(units);
    if (Object.values(inputs).every((typed) => typed.units === units)) return;
    const texts = await this.#call('convert', { id: this.#id, inputs, units });
    if (!texts || units !== this.#app.units) return;
    for (const [name, text] of Object.entries(texts)) {
      const field = this.#fields.get(name);
      if (field.origin === inputs[name]) field.show(text);
    }
  }

  // Asking calc

  /** Show the fields that are asked, given the choices made; one of these may stand further down, under 'More', and hang on another itself. */
  #askFields() {
    /** @type {Map<string, string>} */
    const choices = new Map();
    let before = '';
    let now = 'none';
    while (now !== before) {
      before = now;
      for (const field of this.#fields.values()) field.ask(choices);
      now = JSON.stringify([...choices].sort());
    }
  }

  /** One question at a time goes to the desk; the newest is asked next, those between are dropped. */
  async #work() {
    clearTimeout(this.#timer);
    if (this.#busy) {
      this.#again = true;
      this.#dropping.abort();
      return;
    }
    this.#busy = true;
    const slow = setTimeout(() => this.#showSlow(true), SLOW);
    do {
      this.#again = false;
      this.#share = 0;
      this.#dropping = new AbortController();
      const inputs = Object.fromEntries(this.#inputs());
      const asked = { id: this.#id, inputs, units: this.#app.units, confirmed: this.#confirmed };
      const reply = await this.#call('begin', asked, { signal: this.#dropping.signal, progress: (share) => this.#progressed(share) });
      if (this.#ending.signal.aborted) {
        clearTimeout(slow);
        return;
      }
      if (reply && !this.#again) this.#show({ ...reply, inputs });
    } while (this.#again);
    this.#busy = false;
    clearTimeout(slow);
    if (this.#slow) this.#showSlow(false);
  }

  /** @param {number} share */
  #progressed(share) {
    this.#share = share;
    if (this.#slow) this.#showState();
  }

  /** @param {boolean} slow */
  #showSlow(slow) {
    this.#slow = slow;
    this.#root.toggleAttribute('data-slow', slow);
    this.#showState();
  }

  /**
   * @param {string} name @param {object} args
   * @param {{signal?: AbortSignal, progress?: (share: number) => void}} [options]
   * @returns {Promise<any>} null when the desk cannot, or need not any longer
   */
  async #call(name, args, options) {
    try {
      return await this.#app.desk.call(name, args, options);
    } catch (error) {
      if (this.#ending.signal.aborted || options?.signal?.aborted) return null;
      this.#reply = null;
      this.#fault = /** @type {any} */ (error).code === 'bug';
      if (this.#fault) console.error(error);
      this.#answer.clear();
      this.#showState();
      return null;
    }
  }

  /** The desk woke, failed, or started again after a crash: what is not answered yet is asked again. */
  #deskChanged() {
    this.#showState();
    if (this.#app.desk.state === 'ready' && !this.#reply && !this.#busy) this.#work();
  }

  // Showing what came back

  /** @param {any} reply */
  #show(reply) {
    const before = said(this.#reply);
    this.#reply = reply;
    this.#fault = false;
    if (reply.headline) this.#answer.show(reply, this.#given());
    else this.#answer.clear();
    this.#showMessages();
    this.#showState();
    if (said(reply) !== before && Object.keys(this.#record().inputs).length) this.#keep();
    if (!reply.headline) return;
    const { label, text, unit, say, steps } = reply.headline;
    this.#app.announce([`${label}: ${text} ${unit}`, ...steps, say].join('. '));
  }

  #showMessages() {
    if (!this.#reply) return;
    const { errors, queries } = this.#reply;
    const shown = errors.filter((/** @type {any} */ error) => this.#isTold(error));
    for (const field of this.#fields.values()) {
      field.say(shown.find((/** @type {any} */ error) => error.field === field.name)?.message ?? '');
    }
    this.#putQuestion(queries.find((/** @type {any} */ query) => this.#isFresh(query.field)) ?? shown.find((/** @type {any} */ error) => error.choices?.length));
    if (this.#summary.isOpen) this.#summary.fill(errors);
    if (!errors.length) this.#submitted = false;
    this.#title(this.#summary.isOpen);
  }

  /** What was said of a field is said of what stands in it now, not of an entry before. @param {string} name */
  #isFresh(name) {
    return (this.#fields.get(name)?.origin ?? null) === (this.#reply.inputs[name] ?? null);
  }

  /** The question about a slip; where the field itself says what is wrong, only what else may be meant. @param {any} told */
  #putQuestion(told) {
    const field = this.#fields.get(told?.field);
    const before = this.#ask.text;
    const { meant } = this.#ask.element.dataset;
    if (told && this.#growing === told.field) this.#ask.put(undefined);
    else this.#ask.put(told?.keep || !field ? told : { ...told, message: meant.replace('{}', field.label) });
    if (!this.#ask.text || this.#ask.text === before) return;
    this.#app.announce(this.#ask.text);
    const { activeElement } = document;
    const covered = activeElement?.getBoundingClientRect().bottom > this.#ask.element.getBoundingClientRect().top;
    if (covered && this.#form.contains(activeElement)) activeElement.scrollIntoView({ block: 'nearest' });
  }

  /** A field's own message comes after leaving it; 'nothing there' only once the answer was asked for. @param {any} error */
  #isTold({ field, code }) {
    if (!this.#isFresh(field)) return false;
    if (this.#submitted) return true;
    return code !== 'missing' && (this.#fields.get(field)?.left ?? true);
  }

  /** The bar at the bottom: the figure, or in words why there is none. Two elements, so that neither ever moves. */
  #showState() {
    const { headline } = this.#reply ?? {};
    const words = this.#words.dataset;
    const shown = headline && !this.#slow;
    this.#figure.hidden = !shown;
    this.#words.hidden = Boolean(shown);
    if (shown) {
      const part = (/** @type {string} */ name) => this.#figure.querySelector(`[data-part="readout-${name}"]`);
      part('label').textContent = headline.label;
      part('figure').textContent = glue(`${headline.text} ${headline.unit}`.trim());
    } else if (this.#fault) this.#words.textContent = words.bug;
    else if (this.#app.desk.state !== 'ready') this.#words.textContent = words[this.#app.desk.state];
    else if (this.#slow) this.#words.textContent = this.#share ? words.share.replace('{}', String(Math.round(100 * this.#share))) : words.working;
    else {
      const [error] = this.#reply?.errors ?? [];
      const still = error ? words[['missing', 'choose'].includes(error.code) ? 'missing' : 'wrong'] : words.working;
      this.#words.textContent = this.#ask.text ? words.asking : still.replace('{}', this.#fields.get(error?.field)?.label ?? '');
    }
    this.#root.toggleAttribute('data-answered', Boolean(headline));
  }

  /** @param {SubmitEvent} event */
  async #submit(event) {
    event.preventDefault();
    this.#submitted = true;
    this.#grows('');
    for (const field of this.#fields.values()) field.left = true;
    await this.#work();
    while (this.#busy) await new Promise((resolve) => setTimeout(resolve, 20));
    if (this.#ending.signal.aborted) return;
    if (!this.#reply) {
      this.#root.querySelector('[data-part="common"]').scrollIntoView({ block: 'start' });
      return;
    }
    const { errors, queries, headline } = this.#reply;
    this.#showMessages();
    this.#summary.open(errors);
    this.#title(errors.length > 0);
    if (!errors.length && queries.length) this.#ask.focus();
    if (headline) {
      this.#answer.element.focus({ preventScroll: true });
      this.#answer.element.scrollIntoView({ block: 'start' });
    }
  }

  /** @param {boolean} wrong */
  #title(wrong) {
    const prefix = this.#root.dataset.errorTitle;
    const plain = document.title.replace(prefix, '');
    document.title = wrong ? prefix + plain : plain;
  }

  /** The maker answered a question about a slip. @param {string} name @param {string} value @param {boolean} keep */
  #picked(name, value, keep) {
    const field = this.#fields.get(name);
    if (keep) {
      this.#confirmed = { ...this.#confirmed, [name]: field.origin?.typed ?? '' };
    } else {
      field.show(value);
      field.take(this.#app.units);
    }
    field.target.focus({ preventScroll: true });
    this.#ask.put(undefined);
    this.#changed();
  }

  /** Bring a field into view with its label, then focus it. @param {string} name */
  #goTo(name) {
    const field = this.#fields.get(name);
    if (!field) return;
    const fold = field.element.closest('details');
    if (fold) fold.open = true;
    field.element.scrollIntoView({ block: 'start' });
    field.target.focus({ preventScroll: true });
  }
}

/** What a draft keeps of an answer. @param {any} reply */
function said(reply) {
  return JSON.stringify([reply?.headline?.text, reply?.carries]);
}
