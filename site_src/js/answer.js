// Shows an answer in its place. Every word comes from calc or from the page; nothing is worked out here.

import { carryFragment } from './address.js';
import { copyText, shareAddress } from './device/share.js';
import { draw } from './draw.js';
import { glue } from './spell.js';

/** A figure of more characters than this goes over several lines. */
const LONG_FIGURE = 8;
/** A table with a cell longer than this is read row by row on a narrow screen. */
const LONG_CELL = 28;
const TEXT_LISTS = ['given', 'lines', 'cautions', 'carries', 'limits', 'changes', 'working', 'assumed', 'sources'];

export class AnswerView {
  #root;
  #reserve;
  #common;
  /** @type {any} */
  #answer = null;

  /** @param {HTMLElement} reserve @param {{title: string, address: () => string}} about */
  constructor(reserve, about) {
    this.#reserve = reserve;
    this.#root = /** @type {HTMLElement} */ (reserve.querySelector('[data-part="answer"]'));
    this.#common = reserve.querySelector('[data-part="common"]');
    this.#root.addEventListener('click', (event) => {
      const button = /** @type {HTMLElement} */ (event.target).closest('[data-do]');
      if (button) this.#act(/** @type {HTMLButtonElement} */ (button), about);
    });
  }

  get element() {
    return this.#root;
  }

  /** @param {any} answer an answer with a headline @param {{label: string, text: string}[]} given what was entered, for paper */
  show(answer, given) {
    this.#answer = answer;
    this.#headline(answer);
    const lists = { ...answer, given };
    for (const name of TEXT_LISTS) {
      this.#fill(name, lists[name].map((/** @type {any} */ entry) => this.#entry(name, entry)));
    }
    this.#ladder(answer.limits);
    const hands = (/** @type {any} */ carry) => carryFragment(carry, answer);
    this.#root.querySelectorAll('.carry').forEach((link, index) => link.setAttribute('href', `../${answer.carries[index].to}/${hands(answer.carries[index])}`));
    for (const list of /** @type {NodeListOf<HTMLAnchorElement>} */ (this.#root.querySelectorAll('[data-carry]'))) {
      const carry = answer.carries.find((/** @type {any} */ one) => one.to === list.dataset.carry);
      list.hash = hands(carry ?? { inputs: {}, leaves: [] }); // nothing to say there says so too
    }
    this.#fill('drawings', answer.drawings.map((/** @type {any} */ drawing) => this.#drawing(drawing)));
    this.#fill('grids', answer.grids.map((/** @type {any} */ grid) => this.#grid(grid)));
    if (this.#root.hidden) {
      this.#part(this.#root, 'table-place').append(this.#common);
      this.#section('table').hidden = false;
      this.#root.hidden = false;
    }
  }

  /** No figure stands when there is no answer to it. */
  clear() {
    if (this.#root.hidden) return;
    this.#answer = null;
    this.#root.hidden = true;
    this.#reserve.append(this.#common);
  }

  /** @param {any} answer */
  #headline({ headline, band }) {
    const hero = this.#part(this.#root, 'hero');
    hero.dataset.tone = headline.tone;
    const tone = this.#part(hero, 'tone');
    tone.textContent = tone.dataset[headline.tone] ?? '';
    const figure = this.#part(hero, 'figure');
    hero.toggleAttribute('data-words', !/\d/.test(headline.text));
    hero.toggleAttribute('data-long', /\d/.test(headline.text) && headline.text.length > LONG_FIGURE);
    hero.style.setProperty('--chars', String(headline.text.length + 0.4 * headline.unit.length));
    figure.textContent = glue(headline.text);
    for (const name of ['label', 'unit', 'first', 'rest']) this.#part(hero, name).textContent = glue(headline[name]);
    this.#part(hero, 'steps').replaceChildren(...headline.steps.map((/** @type {string} */ text) => {
      const step = document.createElement('li');
      step.textContent = glue(text);
      return step;
    }));
    this.#part(hero, 'band').textContent = glue(band?.text ?? '');
  }

  /** @param {string} name @param {any} entry */
  #entry(name, entry) {
    const item = this.#clone(name);
    for (const part of /** @type {NodeListOf<HTMLElement>} */ (item.querySelectorAll('[data-part]'))) {
      const value = entry[part.dataset.part];
      if (part.dataset.part === 'seen') part.textContent = part.dataset[value] ?? '';
      else if (typeof value === 'string') part.textContent = value;
    }
    if (name === 'cautions') {
      item.dataset.tone = entry.tone;
      const word = this.#part(item, 'word');
      word.textContent = word.dataset[entry.tone];
    }
    return item;
  }

  /** Bars as long as calc says; the rung that decides is marked by shape and word. @param {any[]} limits */
  #ladder(limits) {
    const rungs = this.#root.querySelectorAll('.rung');
    limits.forEach(({ rules, bar: share }, index) => {
      const rung = /** @type {HTMLElement} */ (rungs[index]);
      rung.toggleAttribute('data-rules', rules);
      this.#part(rung, 'rules').hidden = !rules;
      const bar = this.#part(rung, 'bar');
      bar.hidden = !(share > 0);
      bar.toggleAttribute('data-beyond', share > 1);
      bar.style.setProperty('--share', String(Math.min(1, share)));
    });
  }

  /** @param {import('./draw.js').Drawing} drawing */
  #drawing(drawing) {
    const figure = this.#clone('drawings');
    this.#part(figure, 'picture').append(draw(drawing));
    this.#part(figure, 'title').textContent = drawing.title;
    this.#part(figure, 'says').textContent = drawing.says;
    return figure;
  }

  /** @param {{title: string, head: string[], rows: string[][]}} grid */
  #grid({ title, head, rows }) {
    const box = this.#clone('grids');
    this.#part(box, 'title').textContent = title;
    box.toggleAttribute('data-prose', rows.flat().some((text) => text.length > LONG_CELL));
    box.setAttribute('aria-label', title);
    const cell = (/** @type {string} */ tag, /** @type {string} */ text, /** @type {string} */ scope) => {
      const made = document.createElement(tag);
      made.textContent = text;
      if (scope) made.setAttribute('scope', scope);
      return made;
    };
    this.#part(box, 'head').append(...head.map((text) => cell('th', text, 'col')));
    this.#part(box, 'rows').append(
      ...rows.map(([first, ...rest]) => {
        const row = document.createElement('tr');
        row.append(cell('th', first, 'row'), ...rest.map((text) => cell('td', text, '')));
        return row;
      }),
    );
    return box;
  }

  /** @param {string} name @param {HTMLElement[]} items */
  #fill(name, items) {
    this.#root.querySelector(`[data-list="${name}"]`).replaceChildren(...items);
    const section = this.#section(name);
    if (section) section.hidden = items.length === 0;
  }

  /** @param {string} name */
  #section(name) {
    return /** @type {HTMLElement} */ (this.#root.querySelector(`[data-section="${name}"]`));
  }

  /** @param {string} name */
  #clone(name) {
    const template = /** @type {HTMLTemplateElement} */ (this.#root.querySelector(`[data-template="${name}"]`));
    return /** @type {HTMLElement} */ (template.content.firstElementChild.cloneNode(true));
  }

  /** @param {HTMLElement} place @param {string} name */
  #part(place, name) {
    return /** @type {HTMLElement} */ (place.querySelector(`[data-part="${name}"]`));
  }

  /** @param {HTMLButtonElement} button @param {{title: string, address: () => string}} about */
  async #act(button, { title, address }) {
    if (!this.#answer) return;
    if (button.dataset.do === 'print') {
      window.print();
      return;
    }
    const words = button.textContent;
    const done =
      button.dataset.do === 'copy' ? await copyText(this.#answer.text) : await shareAddress({ title, url: address() });
    if (done === null) return;
    button.textContent = done ? button.dataset.done : button.dataset.failed;
    setTimeout(() => (button.textContent = words), 2500);
  }
}
