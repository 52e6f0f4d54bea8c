// Home: the way back to where the maker was last. The newest draft or run of this device.

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const records = [...(await app.store.all('drafts')), ...(await app.store.all('runs'))].filter((record) => record.path && record.at);
  const last = records.sort((a, b) => b.at - a.at)[0];
  const part = (/** @type {string} */ name) => /** @type {HTMLElement} */ (root.querySelector(`[data-part="${name}"]`));
  if (last) {
    const link = /** @type {HTMLAnchorElement} */ (part('link'));
    link.href = new URL(last.path, app.root).href;
    part('name').textContent = last.name;
    part('what').textContent = last.what ?? '';
    part('none').hidden = true;
    link.hidden = false;
  }
  return () => {};
}
