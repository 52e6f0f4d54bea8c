// Run one Python file in the pinned Pyodide on Node, as `python FILE ARGS` would.
//
//   node pyodide_node.mjs PYODIDE_FOLDER [--mount /name=FOLDER]... [--wheel FILE]... [--path /folder]... [--stdlib NAME] FILE ARGS...
//
// Folders are mounted where they say, wheels are unpacked to site-packages, NAME is another standard library in the Pyodide
// folder, and the file's exit code becomes ours. Nothing is fetched: the package list is empty.
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";

const [, , folder, ...rest] = process.argv;
const mounts = [];
const wheels = [];
const paths = [];
let stdlib = "python_stdlib.zip";
while (rest.length > 1 && rest[0].startsWith("--")) {
  const [option, value] = rest.splice(0, 2);
  if (option === "--mount") mounts.push(value.split("="));
  else if (option === "--wheel") wheels.push(value);
  else if (option === "--path") paths.push(value);
  else if (option === "--stdlib") stdlib = value;
  else throw new Error(`unknown option ${option}`);
}
const [file, ...args] = rest;

/** An error without the one-line megabyte of pyodide.asm.mjs that Node would print around it. */
function short(error) {
  return String(error?.stack ?? error).split("\n").filter((line) => line.length < 400).join("\n");
}

async function main() {
  const home = resolve(folder);
  const { loadPyodide, version } = await import(pathToFileURL(`${home}/pyodide.mjs`).href);
  const pyodide = await loadPyodide({
    indexURL: home,
    packageBaseUrl: home,
    stdLibURL: `${home}/${stdlib}`,
    lockFileContents: {
      info: { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2", version },
      packages: {},
    },
    env: { PYTHONPATH: paths.join(":"), PYTHONHASHSEED: "0", HOME: "/home/pyodide" }, // one seed: the same bytes from every build
    args: [],
  });
  for (const [name, real] of mounts) pyodide.mountNodeFS(name, resolve(real));
  const site = pyodide.runPython("import site; site.getsitepackages()[0]");
  for (const wheel of wheels) {
    pyodide.unpackArchive(new Uint8Array(readFileSync(wheel)), "wheel", { extractDir: site });
  }
  pyodide.globals.set("_file", file);
  pyodide.globals.set("_text", readFileSync(file, "utf8"));
  pyodide.globals.set("_arguments", pyodide.toPy(args));
  return pyodide.runPython(`
import importlib, sys
importlib.invalidate_caches()
sys.argv = [_file, *_arguments]
_space = {"__name__": "__main__", "__file__": _file}
try:
    exec(compile(_text, _file, "exec"), _space)
    _code = 0
except SystemExit as _end:
    _code = _end.code if isinstance(_end.code, int) else 0 if _end.code is None else (print(_end.code, file=sys.stderr), 1)[1]
sys.stdout.flush()
int(_code)
`);
}

process.on("uncaughtException", (error) => {
  console.error(short(error));
  process.exit(70);
});
try {
  process.exitCode = await main();
} catch (error) {
  console.error(short(error));
  process.exitCode = 70;
}
