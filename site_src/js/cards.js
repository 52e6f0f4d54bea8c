// The emergency cards: puts the maker's own number, kept on this device, wherever a card says to call; and the way back.

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const form = /** @type {HTMLFormElement} */ (root.querySelector('[data-part="form"]'));
  const input = /** @type {HTMLInputElement} */ (form.elements.namedItem('number'));
  const button = form.querySelector('button');
  const said = form.querySelector('[data-part="said"]');
  const add = /** @type {HTMLElement} */ (root.querySelector('[data-part="add"]'));

  const back = /** @type {HTMLAnchorElement} */ (root.querySelector('[data-part="back"]'));
  if (history.state?.from) [back.href, back.textContent] = [history.state.from, back.dataset.from];

  const show = (/** @type {string} */ number) => {
    add.classList.toggle('visually-hidden', Boolean(number));
    for (const place of root.querySelectorAll('[data-number]')) {
      if (!number) {
        place.textContent = root.dataset.fallback;
        continue;
      }
      const call = document.createElement('a');
      call.href = `tel:${number.replace(/[^\d+*#,]/g, '')}`;
      call.textContent = number;
      place.replaceChildren(call);
    }
  };
  const keep = async (/** @type {SubmitEvent} */ event) => {
    event.preventDefault();
    const number = input.value.trim();
    show(number);
    if (await app.store.set('emergencyNumber', number)) said.textContent = number ? button.dataset.done : button.dataset.cleared;
  };

  const kept = (await app.store.settings()).emergencyNumber ?? '';
  input.value = kept;
  show(kept);
  form.addEventListener('submit', keep);
  return () => form.removeEventListener('submit', keep);
}
