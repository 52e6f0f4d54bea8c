// Two things that Pyodide leaves open when it starts its WebAssembly.

const PAGE = 65536; // memory grows in these

/** @type {Promise<ArrayBuffer>|null} */
let restoring = null; // the snapshot that is being put back, still to be read

/** Memory may have grown before it was kept: let it be as large when this snapshot is put back, which Pyodide takes for granted. @param {Promise<ArrayBuffer>|null} snapshot */
export function makeRoomFor(snapshot) {
  restoring = snapshot;
}

/** @param {WebAssembly.WebAssemblyInstantiatedSource} made */
async function roomy(made) {
  const memory = /** @type {WebAssembly.Memory} */ (made.instance.exports.memory);
  const snapshot = memory && (await restoring);
  if (!snapshot) return made;
  const [, before] = new Uint32Array(snapshot, 0, 2); // its second word: the length of what goes before the memory
  const missing = snapshot.byteLength - before - memory.buffer.byteLength;
  if (missing > 0) memory.grow(missing / PAGE);
  return made;
}

/** Rejects when the wasm cannot be compiled: Pyodide only tells the console that, and then waits for ever. */
export const noWasm = new Promise((_, reject) => {
  const compile = WebAssembly.instantiateStreaming.bind(WebAssembly);
  const failed = (/** @type {Error} */ error) => (reject(error), Promise.reject(error));
  WebAssembly.instantiateStreaming = (...given) => compile(...given).then(roomy).catch(failed);
});
