// The runs of one kind that were gone through on this device, newest first: what they ended in, and the figures they went by.

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const part = (/** @type {ParentNode} */ place, /** @type {string} */ name) => /** @type {HTMLElement} */ (place.querySelector(`[data-part="${name}"]`));
  const { kind, lists } = root.dataset;
  const runs = (await app.store.all('runs')).filter((run) => run.kind === kind && run.title && (!lists || lists.split(' ').includes(run.list)));
  runs.sort((one, other) => other.at - one.at);
  const day = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
  const { unfinished } = part(root, 'list').dataset;
  const template = /** @type {HTMLTemplateElement} */ (root.querySelector('template'));
  const rows = runs.map((run) => {
    const row = /** @type {HTMLElement} */ (template.content.firstElementChild.cloneNode(true));
    part(row, 'title').textContent = run.title;
    part(row, 'when').textContent = day.format(run.at);
    part(row, 'when').setAttribute('datetime', new Date(run.at).toISOString());
    part(row, 'outcome').textContent = run.outcome || `${unfinished} ${run.progress}`;
    part(row, 'figures').textContent = run.figures;
    part(row, 'record').append(...run.record.map((/** @type {string} */ text) => Object.assign(document.createElement('li'), { textContent: text })));
    part(row, 'record').hidden = run.record.length === 0;
    return row;
  });
  part(root, 'list').replaceChildren(...rows);
  part(root, 'none').hidden = rows.length > 0;
  return () => {};
}
