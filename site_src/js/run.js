// A step-by-step run in gloves. It keeps the presses and shows the screen that calc makes of them; every press is on the
// device before the screen moves on, and after a reload the last screen stands there at once, while Python wakes.

import * as wakeLock from './device/wake-lock.js';
import { Keypad } from './keypad.js';
import { spell } from './spell.js';

/** A press so soon after the last one is a bounce, ms. */
const BOUNCE = 500;

/** A run that has ended is shown again for so long, ms; after that the page begins a new one. */
const ENDED_SHOWN = 12 * 3600e3;

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const run = new SteppedRun(root, app);
  await run.start();
  return () => run.stop();
}

class SteppedRun {
  #root;
  #app;
  #keypad;
  /** What is kept: the plan it goes by, the presses, the last screen. @type {any} */
  #run = null;
  #busy = false;
  #pressedAt = -Infinity;
  #timer = 0;
  /** Clocks past their warning or their end as last shown: when one more is, calc is asked for the screen again. */
  #late = 0;
  #ending = new AbortController();

  /** @param {HTMLElement} root @param {import('./app.js').App} app */
  constructor(root, app) {
    this.#root = root;
    this.#app = app;
    this.#keypad = new Keypad(this.#part('pad'), this.#ending.signal);
  }

  async start() {
    const { signal } = this.#ending;
    this.#part('undo').addEventListener('click', () => this.#undo(), { signal });
    this.#part('again').addEventListener('click', () => this.#begin(), { signal });
    this.#part('another').addEventListener('click', () => this.#begin(), { signal });
    this.#app.desk.addEventListener('state', () => this.#showBusy(), { signal });
    document.addEventListener('visibilitychange', () => this.#keepAwake(), { signal });
    this.#run = await this.#app.store.get('runs', this.#root.dataset.run);
    if (signal.aborted) return;
    this.#timer = window.setInterval(() => this.#tick(), 1000);
    this.#keepAwake();
    // The steps fill the screen from the first look on, or the second button would lie under the first.
    this.#part('stage').scrollIntoView({ block: 'start', behavior: 'instant' });
    if (this.#run?.open || Date.now() - this.#run?.at < ENDED_SHOWN) {
      this.#show(this.#run.screen);
      this.#part('changed').hidden = same(this.#run.inputs, await this.#plan());
      await this.#refresh();
    } else {
      await this.#begin();
    }
  }

  stop() {
    clearInterval(this.#timer);
    this.#ending.abort();
    wakeLock.stop();
  }

  // What is kept

  /** The inputs of the question as they stand now. */
  async #plan() {
    return (await this.#app.store.get('drafts', this.#root.dataset.question))?.inputs ?? {};
  }

  /** A new run, by the plan as it is now. It is kept from its first press on; one that ended stays among those done before. */
  async #begin() {
    const { run, path, name } = this.#root.dataset;
    if (this.#run?.open === false) {
      await this.#app.store.put('runs', { ...this.#run, id: `${run}-${this.#run.at}`, path: '' });
      await this.#app.store.remove('runs', run);
    }
    this.#run = { id: run, kind: run, path, name, open: true, inputs: await this.#plan(), units: this.#app.units, events: [], screen: null };
    this.#part('changed').hidden = true;
    /** @type {HTMLDetailsElement} */ (this.#part('over')).open = false;
    this.#closeKeypad();
    await this.#refresh();
  }

  /** @param {any[]} events */
  #keep(events) {
    const { screen } = this.#run;
    const what = screen.ended ? screen.title : `${screen.title}, ${screen.step}`;
    const figures = screen.totals.map((/** @type {any} */ total) => `${total.label}: ${total.text} ${total.unit}`).join('; ');
    Object.assign(this.#run, {
      events,
      at: Date.now(),
      what,
      open: !screen.ended,
      title: screen.ended ? screen.title : '',
      outcome: screen.big ? `${screen.big.label}: ${screen.big.text} ${screen.big.unit}` : '',
      figures,
      record: screen.record,
      carry: screen.carry,
    });
    return this.#app.store.put('runs', this.#run);
  }

  // Presses

  /** @param {any} button as calc declared it @param {HTMLElement} element */
  #press(button, element) {
    if (this.#isBounce()) return;
    if (button.ask) {
      this.#openKeypad(button);
    } else if (button.event) {
      element.dataset.pressed = '';
      this.#add(button.event);
    } else {
      this.#undo();
    }
  }

  #isBounce() {
    const now = performance.now();
    if (this.#busy || now - this.#pressedAt < BOUNCE) return true;
    this.#pressedAt = now;
    return false;
  }

  /** @param {any} button */
  #openKeypad(button) {
    this.#keypad.ask(button.ask, (text) => {
      if (this.#busy) return;
      this.#closeKeypad();
      if (text !== null) this.#add({ ...button.event, [button.ask.field]: text });
    });
    this.#showKeypad(true);
  }

  #closeKeypad() {
    this.#keypad.close();
    this.#showKeypad(false);
  }

  /** The keys take the whole stage, so that all of them are in view. @param {boolean} open */
  #showKeypad(open) {
    const stage = this.#part('stage');
    stage.toggleAttribute('data-pad', open);
    this.#part('error').textContent = '';
    if (open) stage.scrollIntoView({ block: 'start', behavior: 'instant' });
  }

  /** Keep the press, then ask what it leads to; a press that calc refuses is taken back. @param {any} event */
  async #add(event) {
    const before = this.#run.events;
    this.#busy = true;
    await this.#keep([...before, { ...event, at: Date.now() / 1000 }]);
    const screen = await this.#refresh();
    if (screen?.errors.length) {
      this.#run.events = before;
      await this.#refresh(screen.errors);
    }
    this.#busy = false;
    if (!screen) return;
    await this.#keep(this.#run.events);
    this.#part('step').focus({ preventScroll: true });
    this.#part('stage').scrollIntoView({ block: 'start', behavior: 'instant' });
  }

  async #undo() {
    if (this.#busy || !this.#run?.events.length) return;
    this.#run.events = this.#run.events.slice(0, -1);
    await this.#keep(this.#run.events);
    if (await this.#refresh()) await this.#keep(this.#run.events);
    this.#part('step').focus({ preventScroll: true });
  }

  /** Ask calc for the screen of the presses so far. @param {any[]} errors of a press that was just taken back */
  async #refresh(errors = []) {
    const { id, inputs, units, events } = this.#run;
    this.#showBusy();
    let screen = null;
    try {
      screen = await this.#app.desk.call('run', { id, inputs, units, events, now: Date.now() / 1000 });
    } catch {
      this.#showBusy();
      return null;
    }
    if (this.#ending.signal.aborted) return null;
    if (!screen.title) return this.#showNoPlan(screen.errors);
    this.#run.screen = screen;
    this.#show(screen, errors);
    return screen;
  }

  // Showing

  #showBusy() {
    const busy = this.#part('busy');
    busy.textContent = busy.dataset[this.#app.desk.state] ?? '';
  }

  async #keepAwake() {
    const awake = this.#part('awake');
    if (document.visibilityState === 'visible') awake.textContent = (await wakeLock.start()) ? awake.dataset.on : awake.dataset.off;
  }

  /** @param {any[]} errors @returns {null} */
  #showNoPlan(errors) {
    this.#part('no-plan').hidden = false;
    this.#part('step').textContent = this.#part('step').dataset.noPlan;
    this.#part('no-plan-why').textContent = errors.map((error) => error.message).join(' ');
    return null;
  }

  /** @param {any} screen @param {any[]} [errors] */
  #show(screen, errors = []) {
    this.#part('no-plan').hidden = true;
    this.#part('next').hidden = !screen.ended;
    this.#part('over').hidden = screen.ended;
    const { tone, title, step, progress, big, say, note } = screen;
    this.#part('stage').dataset.tone = tone;
    const word = this.#part('word');
    word.textContent = word.dataset[tone] ?? '';
    word.hidden = !word.textContent;
    this.#part('title').textContent = title;
    this.#part('step').textContent = step;
    const place = this.#part('progress');
    place.textContent = progress[1] ? place.dataset.words.replace('{}', progress[0]).replace('{}', progress[1]) : '';
    this.#showBig(big);
    this.#part('say').textContent = say;
    this.#part('note').textContent = note;
    this.#part('error').textContent = [...errors, ...screen.errors].map((error) => error.message).join(' ');
    this.#fill('cautions', 'caution', screen.cautions, (row, caution) => (row.textContent = caution.text));
    this.#fill('totals', 'total', screen.totals, (row, total) => {
      for (const name of ['label', 'text', 'unit']) this.#part(name, row).textContent = total[name];
    });
    this.#showButtons(screen.buttons);
    this.#fill('clocks', 'clock', screen.clocks, (row, clock) => (row.dataset.clock = clock.id));
    this.#showClocks();
    this.#app.announce([title, step, big && `${big.label} ${big.text} ${big.unit}`, say].filter(Boolean).join('. '));
  }

  /** @param {{label: string, text: string, unit: string}|null} big */
  #showBig(big) {
    const place = this.#part('big');
    place.hidden = !big;
    if (!big) return;
    for (const name of /** @type {const} */ (['label', 'text', 'unit'])) this.#part(`big-${name}`).textContent = big[name];
    place.style.setProperty('--chars', String(big.text.length));
    place.toggleAttribute('data-long', big.text.length > 5);
  }

  /** Dangerous ones on top, the main one at the bottom, always in the same place under the thumb. @param {any[]} buttons */
  #showButtons(buttons) {
    const write = (/** @type {HTMLElement} */ element, /** @type {any} */ button) => {
      element.textContent = button.label;
      element.classList.add(`stage__${button.kind}`);
      element.classList.toggle('button--main', button.kind === 'main');
      element.addEventListener('click', () => this.#press(button, element));
    };
    const of = (/** @type {string} */ kind) => buttons.filter((button) => button.kind === kind);
    this.#fill('buttons', 'button', [...of('danger'), ...of('other')], write);
    this.#fill('go', 'button', of('main'), write);
    /** @type {HTMLButtonElement} */ (this.#part('undo')).disabled = this.#run.events.length === 0;
  }

  // Clocks

  #tick() {
    const before = this.#late;
    this.#showClocks();
    // A button that changed by itself, just as a finger came down on it, does not take that press.
    if (this.#late > before && !this.#busy && !this.#keypad.open) this.#refresh().then(() => (this.#pressedAt = performance.now()));
  }

  /** Clocks go by the time of day, so neither a reload nor a locked screen stops them. */
  #showClocks() {
    const now = Date.now() / 1000;
    const clocks = this.#run?.screen?.clocks ?? [];
    const rows = /** @type {HTMLElement[]} */ ([...this.#part('clocks').children]);
    this.#late = 0;
    let alarm = '';
    clocks.forEach((/** @type {any} */ clock, /** @type {number} */ number) => {
      const row = rows[number];
      const left = clock.ends === null ? null : clock.ends - now;
      const late = left !== null && left < 0;
      const warn = clock.warns !== null && now > clock.warns;
      this.#late += Number(late) + Number(warn);
      this.#part('label', row).textContent = late ? clock.overdue_label : clock.label;
      const time = spell(left === null ? now - clock.starts : Math.abs(left));
      this.#part('time', row).textContent = time;
      row.style.setProperty('--chars', String(time.length));
      row.toggleAttribute('data-late', late);
      row.toggleAttribute('data-warn', warn && !late);
      if (late && clock.alarm) alarm = clock.overdue_label;
    });
    const stage = this.#part('stage');
    if (alarm && !stage.hasAttribute('data-alarm')) {
      this.#app.announce(alarm);
      if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.([400, 200, 400]); // else a browser refuses, and complains
    }
    stage.toggleAttribute('data-alarm', Boolean(alarm));
  }

  // Helpers

  /**
   * Fill a list from a template.
   * @param {string} place @param {string} template @param {any[]} entries @param {(row: HTMLElement, entry: any) => unknown} write
   */
  #fill(place, template, entries, write) {
    const { content } = /** @type {HTMLTemplateElement} */ (this.#root.querySelector(`[data-template="${template}"]`));
    const rows = entries.map((entry) => {
      const row = /** @type {HTMLElement} */ (content.firstElementChild.cloneNode(true));
      write(row, entry);
      return row;
    });
    this.#part(place).replaceChildren(...rows);
  }

  /** @param {string} name @param {ParentNode} [place] */
  #part(name, place = this.#root) {
    return /** @type {HTMLElement} */ (place.querySelector(`[data-part="${name}"]`));
  }
}

/** @param {unknown} one @param {unknown} other */
function same(one, other) {
  return JSON.stringify(one) === JSON.stringify(other);
}
