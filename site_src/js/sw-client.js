// The page's side of the service worker: registers it, says once what the device keeps, offers an update, and takes it when
// the maker says so.

const ROOT = new URL('../../../', import.meta.url); // this file lies in assets/HASH/js/
const DAY_MS = 24 * 60 * 60 * 1000;
const SILENT_MS = 10_000; // an install that says nothing for so long is not waited for
const FORCE_MS = 3_000; // a new version that does not take over in this time is loaded anyway

const container = navigator.serviceWorker;

/** @type {Promise<ServiceWorkerRegistration|null>|null} */
let registering = null;

/** Register once; null where the browser has no service workers or refuses them (private windows do). */
export function register() {
  registering ??= container
    ? container.register(new URL('sw.js', ROOT), { scope: ROOT.href, updateViaCache: 'none' }).catch(/** @returns {null} */ () => null)
    : Promise.resolve(null);
  return registering;
}

/**
 * Wait until the engine can be fetched without fetching it twice: on a first visit that is when the service worker has
 * installed it and controls this page. Never waits where no service worker will come.
 * @param {(done: number, total: number) => void} [onProgress] bytes of the engine on this device so far, of all
 */
export async function engineAtHand(onProgress = () => {}) {
  const registration = await register();
  if (!registration || container.controller || registration.active) return;
  await new Promise((resolve) => {
    let timer = 0;
    const alive = () => {
      clearTimeout(timer);
      timer = window.setTimeout(end, SILENT_MS);
    };
    const heard = (/** @type {MessageEvent} */ { data }) => {
      alive();
      if (data?.type === 'installing' && data.group === 'engine') onProgress(data.done, data.total);
      if (data?.type === 'install-failed') end();
    };
    const end = () => {
      clearTimeout(timer);
      container.removeEventListener('message', heard);
      container.removeEventListener('controllerchange', end);
      resolve(undefined);
    };
    container.addEventListener('message', heard);
    container.addEventListener('controllerchange', end);
    if (container.controller) end();
    else alive();
  });
}

/**
 * What is complete on this device, and mended where it was not; null where nothing is kept.
 * @param {boolean} deep check every byte
 * @returns {Promise<{version: string, shell: boolean, engine: boolean}|null>}
 */
export async function report(deep) {
  const registration = await register();
  const worker = container?.controller ?? registration?.active;
  if (!worker) return null;
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage({ type: 'report', deep }, [port2]);
  });
}

/**
 * Say what is kept, look for updates now and once a day, and offer them.
 * @param {{status: {kept: (what: 'offline'|'incomplete'|'notKept') => void, offerUpdate: (take: () => void) => void}}} app
 */
export async function startKeeping({ status }) {
  const registration = await register();
  if (!registration) {
    status.kept('notKept');
    return;
  }
  const sayKept = async (/** @type {boolean} */ deep) => {
    const done = await report(deep);
    if (done) status.kept(done.shell && done.engine ? 'offline' : 'incomplete');
  };
  const offer = () => {
    if (registration.waiting && registration.active) status.offerUpdate(() => takeOver(registration));
  };
  const watch = (/** @type {ServiceWorker|null} */ worker) => {
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed') offer();
      if (worker.state === 'activated') sayKept(false);
    });
  };
  watch(registration.installing);
  registration.addEventListener('updatefound', () => watch(registration.installing));
  offer();
  if (registration.active) sayKept(false);

  let checked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - checked < DAY_MS) return;
    checked = Date.now();
    registration.update().catch(() => {});
    sayKept(true);
  });
  window.addEventListener('online', () => {
    registration.update().catch(() => {});
    sayKept(false);
  });
  let controlled = Boolean(container.controller); // the first worker a page gets takes nothing away from it
  container.addEventListener('controllerchange', () => {
    if (controlled) letAllSave().then(reloadOnce); // another tab took the new version: the files of this one are gone
    controlled = true;
  });
}

/** Let everyone save what is typed, then change to the waiting version. @param {ServiceWorkerRegistration} registration */
async function takeOver(registration) {
  await letAllSave();
  container.addEventListener('controllerchange', reloadOnce);
  registration.waiting?.postMessage({ type: 'take-over' });
  setTimeout(reloadOnce, FORCE_MS);
}

/** Components that hold something typed listen for `before-update` on the document and hand over a promise of having saved. */
function letAllSave() {
  /** @type {Promise<unknown>[]} */
  const saving = [];
  const wait = (/** @type {Promise<unknown>} */ work) => saving.push(work);
  document.dispatchEvent(new CustomEvent('before-update', { detail: { wait } }));
  return Promise.race([Promise.allSettled(saving), new Promise((resolve) => setTimeout(resolve, FORCE_MS))]);
}

let reloading = false;
function reloadOnce() {
  if (reloading) return;
  reloading = true;
  location.reload();
}
