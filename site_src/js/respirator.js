// The respirator page: shows the filters of the region the maker chose, and counts while a breath is held.

/** @param {HTMLElement} root @param {import('./app.js').App} app */
export async function mount(root, app) {
  const ending = new AbortController();
  const { signal } = ending;
  const radios = [.../** @type {NodeListOf<HTMLInputElement>} */ (root.querySelectorAll('input[name="region"]'))];

  const show = (/** @type {string} */ region) => {
    for (const place of /** @type {NodeListOf<HTMLElement>} */ (root.querySelectorAll('[data-region]'))) {
      place.hidden = Boolean(region) && place.dataset.region !== region;
    }
    for (const radio of radios) radio.checked = radio.value === region;
  };
  for (const radio of radios) {
    radio.addEventListener('change', () => {
      show(radio.value);
      app.store.set('region', radio.value);
    }, { signal });
  }

  const hold = /** @type {HTMLButtonElement} */ (root.querySelector('[data-part="hold"]'));
  const words = hold.textContent;
  let timer = 0;
  hold.addEventListener('click', () => {
    clearInterval(timer);
    const end = performance.now() + Number(hold.dataset.seconds) * 1000;
    const tick = () => {
      const left = Math.ceil((end - performance.now()) / 1000);
      hold.textContent = left > 0 ? String(left) : hold.dataset.over;
      if (left > 0) return;
      clearInterval(timer);
      app.announce(hold.dataset.over);
    };
    tick();
    timer = window.setInterval(tick, 100);
  }, { signal });

  show((await app.store.settings()).region ?? '');
  return () => {
    clearInterval(timer);
    hold.textContent = words;
    ending.abort();
  };
}
