// The start that ours is measured against: Pyodide as shipped, pint's own wheels with its default registry, `calc` from source.
const at = (path) => new URL(path, import.meta.url).href;

onmessage = async ({ data: { wheels, request } }) => {
  const { loadPyodide } = await import(at('pyodide/pyodide.mjs'));
  const python = await loadPyodide({ indexURL: at('pyodide/') });
  const site = python.runPython('import site; site.getsitepackages()[0]');
  for (const wheel of wheels) {
    const reply = await fetch(at(`wheels/${wheel}`));
    python.unpackArchive(await reply.arrayBuffer(), 'wheel', { extractDir: site });
  }
  const calc = await fetch(at('calc-source.zip'));
  python.unpackArchive(await calc.arrayBuffer(), 'zip', { extractDir: site });
  python.runPython('import pint; pint.UnitRegistry().Quantity(1.0, "inch").m_as("millimeter")');
  postMessage(python.runPython('from calc import desk; desk.handle')(request));
};
