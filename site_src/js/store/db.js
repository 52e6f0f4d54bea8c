// What this device keeps: settings, drafts and runs. The only file that knows how the browser stores them.
// A connection that was closed under us (phones do that in the background) is opened again once; a write that still
// fails is told, and what was to be written stays on the screen.

import { MIGRATIONS } from './migrations.js';

const NAME = 'blankwright';

/** @typedef {'settings'|'drafts'|'runs'} Shelf */

export class Store {
  /** @type {Promise<IDBDatabase>|null} */
  #opening = null;
  #onFailure;
  /** @type {Promise<unknown>} */
  #writing = Promise.resolve();
  /** What waits to be written, by shelf and id; a null takes the record away. @type {Map<string, {record: any, done: Promise<boolean>, make: () => Promise<void>}>} */
  #waiting = new Map();

  /** @param {{onFailure: (error: unknown) => void}} options */
  constructor({ onFailure }) {
    this.#onFailure = onFailure;
    window.addEventListener('pagehide', () => { // the page is left: what waits for its turn does not wait any longer
      for (const { make } of [...this.#waiting.values()]) make().catch(onFailure);
    });
  }

  /** One record, or undefined. A shelf that cannot be read is an empty one. @param {Shelf} shelf @param {string} id */
  async get(shelf, id) {
    try {
      return await this.#with(shelf, 'readonly', (store) => store.get(id));
    } catch {
      return undefined;
    }
  }

  /** All records of a shelf. @param {Shelf} shelf @returns {Promise<any[]>} */
  async all(shelf) {
    try {
      return await this.#with(shelf, 'readonly', (store) => store.getAll());
    } catch {
      return [];
    }
  }

  /** Write a record; true once it is on the device. @param {Shelf} shelf @param {{id: string, [part: string]: any}} record */
  put(shelf, record) {
    return this.#write(shelf, record.id, record);
  }

  /** Take a record away; true once it is gone. @param {Shelf} shelf @param {string} id */
  remove(shelf, id) {
    return this.#write(shelf, id, null);
  }

  /** Every setting by its name. @returns {Promise<Record<string, any>>} */
  async settings() {
    const rows = await this.all('settings');
    return Object.fromEntries(rows.map((row) => [row.id, row.value]));
  }

  /** Keep one setting. @param {string} id @param {unknown} value */
  set(id, value) {
    return this.put('settings', { id, value });
  }

  /** Forget all drafts and runs; true once they are gone. */
  async clear() {
    const done = [];
    for (const shelf of /** @type {Shelf[]} */ (['drafts', 'runs'])) {
      done.push(await this.#told(() => this.#with(shelf, 'readwrite', (store) => store.clear())));
    }
    return done.every(Boolean);
  }

  /** Resolves when everything written so far is on the device, or was told as failed. */
  written() {
    return this.#writing;
  }

  /**
   * One write at a time; of several that wait for the same record only the newest is made, so a fast typist is never far ahead of the device.
   * @param {Shelf} shelf @param {string} id @param {any} record
   */
  #write(shelf, id, record) {
    const key = `${shelf} ${id}`;
    const waiting = this.#waiting.get(key);
    if (waiting) {
      waiting.record = record;
      return waiting.done;
    }
    const make = async () => {
      const newest = this.#waiting.get(key)?.record;
      if (this.#waiting.delete(key)) await this.#with(shelf, 'readwrite', (store) => (newest ? store.put(newest) : store.delete(id)));
    };
    const done = this.#told(make);
    this.#waiting.set(key, { record, done, make });
    return done;
  }

  /** Writes follow one another, so the last one asked for is the one that stays. @param {() => Promise<unknown>} write */
  #told(write) {
    const result = this.#writing.then(() => this.#attempt(write));
    this.#writing = result;
    return result;
  }

  /** @param {() => Promise<unknown>} write */
  async #attempt(write) {
    try {
      await write();
      return true;
    } catch (error) {
      this.#onFailure(error);
      return false;
    }
  }

  /**
   * @template T
   * @param {Shelf} shelf
   * @param {IDBTransactionMode} mode
   * @param {(store: IDBObjectStore) => IDBRequest<T>} ask
   * @returns {Promise<T>}
   */
  async #with(shelf, mode, ask) {
    try {
      return await transact(await this.#open(), shelf, mode, ask);
    } catch {
      this.#opening = null;
      return transact(await this.#open(), shelf, mode, ask);
    }
  }

  #open() {
    this.#opening ??= openDatabase(() => (this.#opening = null));
    return this.#opening;
  }
}

/**
 * @template T
 * @param {IDBDatabase} database
 * @param {Shelf} shelf
 * @param {IDBTransactionMode} mode
 * @param {(store: IDBObjectStore) => IDBRequest<T>} ask
 * @returns {Promise<T>}
 */
function transact(database, shelf, mode, ask) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(shelf, mode, { durability: 'strict' });
    const request = ask(transaction.objectStore(shelf));
    transaction.commit(); // at once: a page that is left now does not take the write with it
    transaction.oncomplete = () => resolve(request.result);
    transaction.onabort = () => reject(transaction.error ?? request.error);
    transaction.onerror = () => reject(transaction.error ?? request.error);
  });
}

/** @param {() => void} onClose @returns {Promise<IDBDatabase>} */
function openDatabase(onClose) {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, MIGRATIONS.length);
    request.onupgradeneeded = (event) => {
      for (const step of MIGRATIONS.slice(event.oldVersion)) step(request.result, request.transaction);
    };
    request.onsuccess = () => {
      const database = request.result;
      database.onclose = onClose;
      database.onversionchange = () => {
        database.close();
        onClose();
      };
      resolve(database);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('the database is in use by an older page'));
  });
}
