// Python in the browser: starts the engine, and passes JSON text to `calc.desk.handle` and back.
//
// In:  { id, call, args }, { drop: id } when the answer is wanted no longer
// Out: { id, ok, result } or { id, ok: false, error: { kind, message } }
//      { event: "working", id, share } while work that comes in steps goes on
//      { event: "progress", step, of } while starting
//      { event: "ready", way: "snapshot" | "plain", ms }, { event: "kept" } when a snapshot was stored
//      { event: "failed", code, message }
//
// Three ways to start: from the snapshot kept for exactly this engine and this `calc`; plainly, when there is none; and
// plainly after a restore that failed for whatever reason, which also throws that snapshot away.

import { ENGINE } from "./engine.js";
import { makeRoomFor, noWasm } from "./wasm.js";
import { zipEntries } from "./zip.js";

const started = performance.now();
const here = (/** @type {string} */ path) => new URL(path, import.meta.url).href;
const folder = here(ENGINE.folder);
const cacheName = `blankwright-snapshot ${here(ENGINE.root)}`;
const snapshotKey = here(`snapshot-${ENGINE.key}`);
const SNAPSHOT_MOST = 48 * 1024 * 1024; // a memory larger than this is not kept
const IDLE_MS = 800; // quiet time after the last call before the snapshot is made

/** @type {any} */
let handle = null; // the one proxy that crosses, kept as long as the worker lives
/** @type {any} */
let python = null;
let unkept = false; // a plain start that has not been snapshotted yet
let idle = 0;
let dropped = 0; // the request that is wanted no longer
/** @type {any[]} */
const waiting = [];

const progress = (/** @type {number} */ step) => postMessage({ event: "progress", step, of: 4 });

/** Fetch a file whole; a status other than 200 is an error. @param {string} url */
async function bytes(url) {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${response.status} for ${new URL(url).pathname}`);
  return new Uint8Array(await response.arrayBuffer());
}

/** Start Pyodide, from a snapshot if one is given, with the files of `calc` in place before Python runs. @param {Promise<Uint8Array>} calc @param {Promise<ArrayBuffer>|null} snapshot */
async function boot(calc, snapshot) {
  makeRoomFor(snapshot);
  import(`${folder}pyodide.asm.mjs`).catch(() => {}); // Pyodide asks for it later, and tells if it fails
  const { loadPyodide, version } = await import(`${folder}pyodide.mjs`);
  progress(2);
  return Promise.race([noWasm, loadPyodide({
    indexURL: folder,
    stdLibURL: `${folder}python.zip`,
    packageBaseUrl: folder,
    lockFileContents: { info: { ...ENGINE.lock, version }, packages: {} },
    _makeSnapshot: !snapshot,
    ...(snapshot && { _loadSnapshot: snapshot }),
    fsInit: async (/** @type {any} */ FS, /** @type {any} */ { sitePackages }) => {
      for (const [name, content] of zipEntries(await calc)) {
        const path = `${sitePackages}/${name}`;
        FS.mkdirTree(path.slice(0, path.lastIndexOf("/")));
        FS.writeFile(path, content);
      }
    },
  })]);
}

/** The kept snapshot, still to be read, or undefined: no cache storage here, none kept, or one of another engine or `calc`. */
async function keptSnapshot() {
  return globalThis.caches && (await caches.open(cacheName)).match(snapshotKey);
}

async function dropSnapshot() {
  if (globalThis.caches) await caches.delete(cacheName);
}

/** Load all that will be needed, then keep the memory as it is for the next start. Never at a call's expense. */
async function keepSnapshot() {
  unkept = false;
  if (!globalThis.caches) return;
  try {
    python.runPython("import bridge; bridge.settle()");
    if (python._module.HEAP8.length > SNAPSHOT_MOST) return;
    const snapshot = python.makeMemorySnapshot();
    await dropSnapshot();
    await (await caches.open(cacheName)).put(snapshotKey, new Response(snapshot));
    postMessage({ event: "kept" });
  } catch (error) {
    console.warn(`No snapshot kept: ${error.message}`); // private browsing, full disk: the next start is a plain one
    await dropSnapshot().catch(() => {});
  }
}

async function start() {
  progress(1);
  const calc = bytes(here(ENGINE.calc));
  const snapshot = await keptSnapshot().catch(/** @returns {null} */ () => null);
  if (snapshot) {
    try {
      python = await boot(calc, snapshot.arrayBuffer()); // read while the engine is compiled
      python.runPython("import bridge; bridge.reseed()");
      handle = python.runPython("bridge.handle");
      if (!JSON.parse(handle('{"call": "catalogue"}')).ok) throw new Error("the restored engine does not answer");
      return "snapshot";
    } catch (error) {
      console.warn(`Snapshot not usable: ${String(error.message).slice(0, 300)}`);
      await dropSnapshot().catch(() => {});
    }
  }
  python = await boot(calc, null);
  progress(3);
  handle = python.runPython("import bridge; bridge.handle");
  unkept = true;
  return "plain";
}

const ask = (/** @type {string} */ call, /** @type {object} */ args) => JSON.parse(handle(JSON.stringify({ call, args })));
const turn = () => new Promise((resolve) => setTimeout(resolve)); // lets what was sent meanwhile be heard

/** @param {{id: number, call: string, args: object}} asked */
async function answer({ id, call, args }) {
  clearTimeout(idle);
  try {
    let reply = ask(call, args);
    while (reply.result?.pending !== undefined && dropped !== id) {
      postMessage({ event: "working", id, share: reply.result.pending });
      await turn();
      if (dropped !== id) reply = ask("go_on", {});
    }
    postMessage({ id, ...reply });
  } catch (error) {
    postMessage({ event: "failed", code: "crashed", message: String(error.message).slice(0, 300) });
  }
  if (unkept) idle = setTimeout(keepSnapshot, IDLE_MS);
}

onmessage = ({ data }) => {
  if (data.drop) dropped = data.drop;
  else if (handle) answer(data);
  else waiting.push(data);
};

try {
  const way = await start();
  progress(4);
  postMessage({ event: "ready", way, ms: Math.round(performance.now() - started) });
  waiting.splice(0).forEach(answer);
  if (unkept) idle = setTimeout(keepSnapshot, IDLE_MS);
} catch (error) {
  postMessage({ event: "failed", code: "boot", message: String(error.message).slice(0, 300) });
}
