// A live checklist: keeps the presses, asks calc what they amount to, shows the screen that comes back. It decides
// nothing: which line is open, what a gate says and how the list ends all come from calc.

import { AskBox } from './ask-box.js';
import * as wakeLock from './device/wake-lock.js';
import { planFigures } from './plan-figures.js';
import { spell } from './spell.js';

/** A second press on the same place within this time is a bounce, ms. */
const BOUNCE = 500;

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const list = new LiveList(root, app);
  await list.start();
  return () => list.stop();
}

class LiveList {
  #root;
  #app;
  #id;
  #box;
  /** @type {any} */
  #run = null;
  /** @type {any} */
  #screen = null;
  /** The presses that the screen on show is of. @type {any} */
  #of = null;
  #pressed = { what: '', at: 0 };
  #timer = 0;
  #asked = 0;
  #ending = new AbortController();
  #clock = new Intl.DateTimeFormat(undefined, { hour: '2-digit', minute: '2-digit' });

  /** @param {HTMLElement} root @param {import('./app.js').App} app */
  constructor(root, app) {
    this.#root = root;
    this.#app = app;
    this.#id = root.dataset.list;
    this.#box = new AskBox(/** @type {HTMLDialogElement} */ (root.querySelector('dialog')), this.#ending.signal);
  }

  async start() {
    const { signal } = this.#ending;
    this.#part('undo').addEventListener('click', () => this.#undo(), { signal });
    this.#app.desk.addEventListener('state', () => this.#showState(), { signal });
    this.#run = await this.#open();
    if (signal.aborted) return;
    this.#showState();
    this.#timer = window.setInterval(() => this.#tick(), 1000);
    wakeLock.start();
    this.#refresh();
  }

  stop() {
    clearInterval(this.#timer);
    this.#ending.abort();
    this.#box.close();
    wakeLock.stop();
  }

  // What is kept

  /**
   * The run that was left open, or a new one; it goes on with what the lists before it, or the mixing steps, have handed on since. A list that
   * watches hears of every batch, any other of the newest run alone.
   */
  async #open() {
    const all = (await this.#app.store.all('runs')).sort((one, other) => other.at - one.at);
    const run = all.find((one) => one.list === this.#id && one.open) ?? this.#fresh();
    const { after, carryHours, rounds } = this.#root.dataset;
    const since = run.at ?? Date.now() - Number(carryHours) * 3600e3;
    const handed = after.split(' ').flatMap((id) => {
      const [newest, ...older] = all.filter((one) => (one.list ?? one.kind) === id).map(({ carry = [] }) => carry);
      return [...(newest ?? []), ...older.flat().filter(({ type }) => rounds !== undefined && type === 'mixed')];
    });
    const news = handed.filter((event) => event.at * 1000 > since).sort((one, other) => one.at - other.at);
    run.events.push(...news);
    return run;
  }

  /** @returns {any} */
  #fresh() {
    return { id: `${this.#id}-${Date.now()}`, kind: 'checklist', list: this.#id, open: true, events: [] };
  }

  /** @param {any} screen */
  #keep(screen) {
    const figures = screen.totals.map((/** @type {any} */ total) => `${total.label}: ${total.text} ${total.unit}`.trim()).join('; ');
    Object.assign(this.#run, {
      at: Date.now(),
      open: !screen.ended,
      title: screen.title,
      path: this.#root.dataset.path,
      name: screen.title,
      what: screen.ended ? screen.big.text : screen.progress_text,
      outcome: screen.ended ? screen.big.text : '',
      progress: screen.progress_text,
      figures,
      record: screen.record,
      carry: screen.carry,
    });
    return this.#app.store.put('runs', this.#run);
  }

  // Presses

  /** @param {any} button from the screen @param {string} where @param {HTMLElement} element */
  async #press(button, where, element) {
    const now = performance.now();
    if (this.#pressed.what === where && now - this.#pressed.at < BOUNCE) return;
    this.#pressed = { what: where, at: now };
    if (button.id === 'new-batch' && this.#screen.ended) {
      this.#run = this.#fresh();
      await this.#refresh();
      return;
    }
    const more = await this.#askMore(button, element);
    if (more) await this.#add({ ...button.event, ...more });
  }

  /** What the press needs besides: a second press, a reason, a figure; null when the maker went back. @param {any} button @param {HTMLElement} element */
  async #askMore({ confirm, ask }, element) {
    const back = this.#part('dialog-no').textContent;
    if (confirm) return (await this.#box.confirm(confirm, element)) ? {} : null;
    if (!ask) return {};
    const units = this.#app.units;
    if (ask.kind === 'number') {
      const typed = await this.#box.figure(ask.label, ask.unit[units], back);
      return typed ? { typed, units } : null;
    }
    const reason = await this.#box.reason(ask.label, ask.choices, back);
    return reason ? { [ask.field]: reason } : null;
  }

  /** @param {any} event */
  async #add(event) {
    this.#run.events = [...this.#run.events, { ...event, at: Date.now() / 1000 }];
    const screen = await this.#refresh();
    if (screen) await this.#keep(screen);
  }

  async #undo() {
    const place = this.#takes;
    if (this.#of !== this.#run.events) return; // a press that is not on show yet is not taken back, nor another in its place
    this.#run.events = this.#run.events.filter((/** @type {any} */ _, /** @type {number} */ number) => number !== place);
    const screen = await this.#refresh();
    if (screen) await this.#keep(screen);
  }

  // Asking calc

  async #refresh() {
    const mine = ++this.#asked;
    const { events } = this.#run;
    const inputs = await planFigures(this.#app, this.#root.dataset);
    const { screen, errors } = await this.#ask(inputs);
    if (mine !== this.#asked || this.#ending.signal.aborted || !screen) return null;
    this.#screen = screen;
    this.#of = events;
    this.#show(screen, [...errors, ...screen.errors]);
    return screen;
  }

  /** A figure that cannot be read is told and left out; the list goes on without it. @param {Record<string, any>} inputs */
  async #ask(inputs) {
    const ask = (/** @type {Record<string, any>} */ given) =>
      this.#app.desk.call('run', { id: this.#id, inputs: given, units: this.#app.units, events: this.#run.events, now: Date.now() / 1000 });
    try {
      const screen = await ask(inputs);
      if (screen.items) return { screen, errors: [] };
      const bad = new Set(screen.errors.map((/** @type {any} */ error) => error.field));
      const rest = Object.fromEntries(Object.entries(inputs).filter(([name]) => !bad.has(name)));
      return { screen: await ask(rest), errors: screen.errors };
    } catch {
      return { screen: null, errors: [] };
    }
  }

  // Showing

  #showState() {
    this.#root.dataset.desk = this.#app.desk.state;
  }

  /** @param {any} screen @param {any[]} errors */
  #show(screen, errors) {
    this.#root.dataset.shown = '';
    for (const item of screen.items) this.#showItem(item);
    this.#part('figures').textContent = screen.totals.map((/** @type {any} */ total) => `${total.label}: ${total.text}\u00a0${total.unit}`).join(' · ');
    this.#part('error').textContent = errors.map((error) => error.message).join(' ');
    this.#part('progress').textContent = screen.progress_text;
    this.#part('bar').dataset.tone = screen.tone;
    this.#part('bar-big').textContent = screen.big?.text ?? '';
    this.#part('bar-say').textContent = screen.ended ? '' : screen.say;
    const card = /** @type {HTMLAnchorElement} */ (this.#part('bar-card'));
    card.hidden = !screen.card;
    card.hash = screen.card;
    this.#fillButtons(screen.buttons);
    this.#fillClocks(screen.clocks);
    this.#showOutcome(screen);
    this.#app.announce([screen.big?.text, screen.say, screen.progress_text].filter(Boolean).join('. '));
  }

  /** @param {any} item */
  #showItem(item) {
    const row = /** @type {HTMLElement} */ (this.#root.querySelector(`[data-item="${item.id}"]`));
    this.#part('text', row).textContent = item.text;
    const gate = this.#part('gate', row);
    gate.dataset.state = item.gate?.state ?? '';
    for (const name of ['word', 'text', 'action', 'hint']) this.#part(`gate-${name}`, row).textContent = item.gate?.[name] ?? '';
    this.#part('stale', row).hidden = !item.stale;
    this.#part('stale', row).textContent = item.stale_text;
    const press = this.#part('press', row);
    const state = JSON.stringify([item.buttons, item.closed, item.done, item.at, item.waits]);
    if (press.dataset.shown === state) return;
    press.dataset.shown = state;
    const focused = press.contains(document.activeElement);
    if (item.closed) press.replaceChildren(this.#closed(item));
    else press.replaceChildren(...item.buttons.map((/** @type {any} */ button) => this.#button(button, item.id)), this.#waits(item.waits));
    if (focused) /** @type {HTMLElement} */ (press.querySelector('.press'))?.focus({ preventScroll: true });
  }

  /** @param {string} text */
  #waits(text) {
    return text ? Object.assign(document.createElement('p'), { textContent: text }) : '';
  }

  /** @param {any} item */
  #closed(item) {
    const made = this.#clone('closed');
    made.dataset.closed = item.closed;
    this.#part('done', made).textContent = item.done;
    this.#part('at', made).textContent = this.#clock.format(item.at * 1000);
    return made;
  }

  /** @param {any} button @param {string} where */
  #button(button, where) {
    const made = this.#clone('button');
    made.textContent = button.label;
    made.classList.add(`press--${button.kind}`);
    made.addEventListener('click', () => this.#press(button, `${where} ${button.id}`, made));
    return made;
  }

  /** @param {any[]} buttons */
  #fillButtons(buttons) {
    const place = this.#part('buttons');
    const shown = buttons.filter((button) => button.kind !== 'undo');
    const state = JSON.stringify(shown);
    if (place.dataset.shown !== state) place.replaceChildren(...shown.map((button) => this.#button(button, 'list')));
    place.dataset.shown = state;
    /** @type {HTMLButtonElement} */ (this.#part('undo')).disabled = this.#takes === undefined;
  }

  /** The place of the press that Undo takes back, undefined when there is none. @returns {number|undefined} */
  get #takes() {
    return this.#screen?.buttons.find((/** @type {any} */ button) => button.kind === 'undo')?.takes;
  }

  /** @param {any} screen */
  #showOutcome({ ended, big, say, record }) {
    const place = this.#part('outcome');
    const news = place.hidden && ended;
    place.hidden = !ended;
    this.#part('outcome-big').textContent = big?.text ?? '';
    this.#part('outcome-say').textContent = say;
    const list = this.#part('outcome-record');
    list.hidden = record.length === 0;
    list.replaceChildren(...record.map((/** @type {string} */ text) => Object.assign(document.createElement('li'), { textContent: text })));
    if (news) this.#part('outcome-big').focus();
  }

  // Clocks

  /** @param {any[]} clocks */
  #fillClocks(clocks) {
    this.#part('clocks').replaceChildren(...clocks.map(() => this.#clone('clock')));
    this.#showClocks();
  }

  #tick() {
    const before = this.#overdue;
    this.#showClocks();
    if (this.#screen && before !== this.#overdue) this.#refresh();
  }

  /** How many clocks are past their end, as last shown. */
  #overdue = 0;

  #showClocks() {
    const now = Date.now() / 1000;
    const clocks = this.#screen?.clocks ?? [];
    const rows = /** @type {HTMLElement[]} */ ([...this.#part('clocks').children]);
    this.#overdue = 0;
    clocks.forEach((/** @type {any} */ clock, /** @type {number} */ number) => {
      const left = clock.ends === null ? null : clock.ends - now;
      const late = left !== null && left < 0;
      this.#overdue += Number(late);
      const label = late ? clock.overdue_label : clock.label;
      const text = spell(left === null ? now - clock.starts : Math.abs(left));
      this.#part('label', rows[number]).textContent = label;
      this.#part('time', rows[number]).textContent = text;
      rows[number].toggleAttribute('data-late', late);
      if (number === 0) this.#part('bar-clock').textContent = `${label} ${text}`;
    });
    if (clocks.length === 0) this.#part('bar-clock').textContent = '';
  }

  /** @param {string} name @param {ParentNode} [place] */
  #part(name, place = this.#root) {
    return /** @type {HTMLElement} */ (place.querySelector(`[data-part="${name}"]`));
  }

  /** @param {string} name */
  #clone(name) {
    const template = /** @type {HTMLTemplateElement} */ (this.#root.querySelector(`[data-template="${name}"]`));
    return /** @type {HTMLElement} */ (template.content.firstElementChild.cloneNode(true));
  }
}
