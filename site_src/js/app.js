// Starts the site: the store, the desk (Python in a worker), the service worker, and the components of the page on show.

import { DeskClient } from './desk-client.js';
import { Nav } from './nav.js';
import { Status } from './status.js';
import { Store } from './store/db.js';
import { startKeeping } from './sw-client.js';
import { wireTheme } from './theme-switch.js';

/**
 * @typedef {object} App What every component is given.
 * @property {DeskClient} desk
 * @property {Store} store
 * @property {Status} status
 * @property {'metric'|'imperial'} units
 * @property {URL} root  Address of the home page.
 * @property {(text: string) => void} announce  Says it to a screen reader, at most once a second.
 * @property {(units: 'metric'|'imperial') => void} setUnits  Changes and keeps the maker's choice.
 */

/**
 * What `data-component="name"` starts. Each module exports `mount(root, app)`, which returns a function that undoes it.
 * @type {Record<string, () => Promise<{mount: (root: any, app: App) => any}>>}
 */
const COMPONENTS = {
  question: () => import('./form.js'),
  resume: () => import('./resume.js'),
  device: () => import('./device-page.js'),
  run: () => import('./run.js'),
  checklist: () => import('./checklist.js'),
  prefill: () => import('./prefill.js'),
  'past-runs': () => import('./past-runs.js'),
  cards: () => import('./cards.js'),
  respirator: () => import('./respirator.js'),
  card: () => import('./card.js'),
  meter: () => import('./meter.js'),
};

/** @type {(() => void)[]} */
let mounted = [];
let generation = 0;

/** Start every component inside an element. @param {ParentNode} place @param {App} app */
async function mountAll(place, app) {
  const mine = generation;
  for (const element of place.querySelectorAll('[data-component]')) {
    const load = COMPONENTS[/** @type {HTMLElement} */ (element).dataset.component];
    const { mount } = await load().catch(() => new Promise((resolve) => setTimeout(resolve, 1000)).then(load)); // a weak signal gets a second try
    if (mine !== generation) return;
    const unmount = await mount(element, app);
    if (mine === generation) mounted.push(unmount);
    else unmount();
  }
  if (mine === generation) document.documentElement.dataset.mounted = location.pathname;
}

/** Stop every component. */
function unmountAll() {
  generation += 1;
  for (const unmount of mounted) unmount();
  mounted = [];
}

/** A polite voice: the newest text wins, and a second passes between two. @param {HTMLElement} place */
function makeAnnouncer(place) {
  let waiting = '';
  let timer = 0;
  const speak = () => {
    timer = 0;
    if (!waiting) return;
    place.textContent = waiting;
    waiting = '';
    timer = window.setTimeout(speak, 1000);
  };
  return (/** @type {string} */ text) => {
    if (text === place.textContent) return;
    waiting = text;
    if (!timer) speak();
  };
}

/** After the first paint, so that reading never waits for arithmetic. @param {() => void} task */
function afterPaint(task) {
  requestAnimationFrame(() => setTimeout(task, 0));
}

async function start() {
  const html = document.documentElement;
  const root = new URL(html.dataset.root, location.href);
  for (const link of document.querySelectorAll('.top a, .foot a, head link')) link.setAttribute('href', /** @type {HTMLAnchorElement} */ (link).href);

  const status = new Status(document.getElementById('status'));
  const store = new Store({ onFailure: () => status.saveFailed() });
  const desk = new DeskClient();
  desk.addEventListener('state', () => status.desk(desk.state, desk.reason));
  desk.addEventListener('progress', (event) => status.progress(/** @type {CustomEvent} */ (event).detail));
  document.addEventListener('before-update', (event) => /** @type {CustomEvent} */ (event).detail.wait(store.written()));
  wireTheme(document.getElementById('theme'));

  const { units = 'metric' } = await store.settings();
  /** @type {App} */
  const app = {
    desk,
    store,
    status,
    units,
    root,
    announce: makeAnnouncer(document.getElementById('announce')),
    setUnits(chosen) {
      app.units = chosen;
      store.set('units', chosen);
    },
  };
  new Nav({ root, leave: unmountAll, arrive: (main) => mountAll(main, app) }).start();
  await mountAll(document, app);
  html.dataset.started = '';
  dispatchEvent(new Event('site-started'));
  afterPaint(() => {
    desk.start();
    startKeeping(app);
  });
}

start();
