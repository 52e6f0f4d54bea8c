// The page's side of Python: one worker, numbered requests, one at a time and in order.
//
// A request that is cancelled while it waits is dropped; one that is being worked on is told to end after its next step, and
// where that takes too long the worker is ended and started anew. A crash rejects the request, restarts the worker once, and after a second crash says so.
// What a maker typed never lives here, so nothing typed can be lost.

import { engineAtHand, report } from './sw-client.js';

const WORKER = new URL('../worker/desk-worker.js', import.meta.url);
const SLOW_MS = 20_000; // a start that shows no progress for so long is called failed, though it may still come
const GRACE_MS = 4_000; // time for a cancelled request to end by itself: cheaper than a new start
const CALM_MS = 60_000; // a crash this long after the last one is a first one again

/** A request that was not answered. `code`: 'crashed', 'bug', 'request', 'noWasm', 'noModule', 'tooSlow', 'notLoaded'. */
export class DeskError extends Error {
  /** @param {string} code @param {string} message */
  constructor(code, message) {
    super(message);
    this.name = 'DeskError';
    this.code = code;
  }
}

/**
 * @typedef {object} Request
 * @property {number} id
 * @property {string} call
 * @property {object} args
 * @property {(result: any) => void} resolve
 * @property {(error: Error) => void} reject
 * @property {(share: number) => void} [progress]
 */

/**
 * Fires 'state' when `state` or `reason` changed, 'progress' ({detail: {done, of}}) while starting, 'launched' when a worker
 * was made and 'kept' when its memory was kept for later starts.
 */
export class DeskClient extends EventTarget {
  /** @type {'waking'|'ready'|'failed'} */
  state = 'waking';
  /** Why it failed: 'noWasm', 'noModule', 'tooSlow', 'notLoaded' or 'crashed'. */
  reason = '';
  /** How the worker last started: 'snapshot' or 'plain', and in how many ms. */
  started = { way: '', ms: 0 };

  /** @type {Worker|null} */
  #worker = null;
  #starting = false;
  /** @type {Request[]} */
  #queue = [];
  /** @type {Request|null} */
  #current = null;
  #number = 0;
  #slow = 0;
  #crashed = -Infinity;
  #mended = false;

  /** Start the engine unless it runs already. Call it after the first paint, on pages that calculate. */
  async start() {
    if (this.#worker || this.#starting) return;
    if (typeof WebAssembly !== 'object') return this.#fail('noWasm');
    if (typeof Worker !== 'function') return this.#fail('noModule');
    this.#starting = true;
    await engineAtHand((done, total) => this.#progress(done / total / 2, 1));
    this.#starting = false;
    this.#launch();
  }

  /**
   * Ask `calc` something.
   * @param {string} call a call of calc/desk
   * @param {object} [args]
   * @param {{signal?: AbortSignal, progress?: (share: number) => void}} [options] `progress` hears the share done of long work
   * @returns {Promise<any>} the result; rejects with DeskError, or with AbortError when cancelled
   */
  call(call, args = {}, { signal, progress } = {}) {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(aborted());
      if (this.state === 'failed' && this.reason !== 'tooSlow') return reject(new DeskError(this.reason, 'the engine does not run here'));
      const request = { id: ++this.#number, call, args, resolve, reject, progress };
      signal?.addEventListener('abort', () => this.#cancel(request), { once: true });
      this.#queue.push(request);
      this.start();
      this.#next();
    });
  }

  /** End the worker, and with it the memory it took; the next call starts it again. */
  stop() {
    this.#end();
    this.#set('waking');
  }

  #launch() {
    let modules = false; // a browser that knows module workers reads the option
    const options = {
      name: 'desk',
      get type() {
        modules = true;
        return /** @type {const} */ ('module');
      },
    };
    this.#worker = new Worker(WORKER, options);
    this.dispatchEvent(new Event('launched'));
    if (!modules) return this.#fail('noModule');
    this.#worker.onmessage = ({ data }) => this.#heard(data);
    this.#worker.onerror = (event) => {
      event.preventDefault();
      if (this.state === 'waking') this.#bootFailed();
      else this.#crash();
    };
    this.#wait();
  }

  /** @param {any} message */
  #heard(message) {
    if (message.event === 'progress') {
      this.#wait();
      this.#progress(0.5 + message.step / message.of / 2, 1);
    } else if (message.event === 'ready') {
      clearTimeout(this.#slow);
      this.started = { way: message.way, ms: message.ms };
      this.#set('ready');
      this.#next();
    } else if (message.event === 'failed') {
      if (message.code === 'boot') this.#bootFailed();
      else this.#crash();
    } else if (message.event === 'working') {
      if (message.id === this.#current?.id) this.#current.progress?.(message.share);
    } else if (message.event === 'kept') {
      this.dispatchEvent(new Event('kept'));
    } else if (message.id === this.#current?.id) {
      const { resolve, reject } = this.#current;
      this.#current = null;
      if (message.ok) resolve(message.result);
      else reject(new DeskError(message.error.kind, message.error.message));
      this.#next();
    }
  }

  #next() {
    if (this.state !== 'ready' || this.#current || !this.#worker) return;
    const request = this.#queue.shift();
    if (!request) return;
    this.#current = request;
    this.#worker.postMessage({ id: request.id, call: request.call, args: request.args });
  }

  /** @param {Request} request */
  #cancel(request) {
    request.reject(aborted());
    this.#queue = this.#queue.filter((waiting) => waiting !== request);
    if (this.#current !== request) return;
    this.#worker?.postMessage({ drop: request.id });
    setTimeout(() => {
      if (this.#current === request) this.#restart();
    }, GRACE_MS);
  }

  #restart() {
    this.#end();
    this.#set('waking');
    this.#launch();
  }

  #crash() {
    const again = performance.now() - this.#crashed < CALM_MS;
    this.#crashed = performance.now();
    this.#current?.reject(new DeskError('crashed', 'the engine stopped'));
    if (again) this.#fail('crashed');
    else this.#restart();
  }

  /** The engine's files may be damaged on this device: have them checked and mended once, then try again. */
  async #bootFailed() {
    this.#end();
    if (this.#mended) return this.#fail('notLoaded');
    this.#mended = true;
    await report(true);
    if (!this.#worker) this.#launch();
  }

  #end() {
    clearTimeout(this.#slow);
    this.#worker?.terminate();
    this.#worker = null;
    this.#current = null;
  }

  #wait() {
    clearTimeout(this.#slow);
    this.#slow = window.setTimeout(() => this.#set('failed', 'tooSlow'), SLOW_MS);
  }

  /** @param {string} reason */
  #fail(reason) {
    this.#end();
    this.#set('failed', reason);
    for (const { reject } of this.#queue.splice(0)) reject(new DeskError(reason, 'the engine does not run here'));
  }

  /** @param {'waking'|'ready'|'failed'} state @param {string} [reason] */
  #set(state, reason = '') {
    if (this.state === state && this.reason === reason) return;
    this.state = state;
    this.reason = reason;
    this.dispatchEvent(new Event('state'));
  }

  /** @param {number} done @param {number} of */
  #progress(done, of) {
    this.dispatchEvent(new CustomEvent('progress', { detail: { done, of } }));
  }
}

function aborted() {
  return new DOMException('cancelled', 'AbortError');
}
