// Moves from page to page without ending the worker: fetches the next page, swaps <main>, keeps history, focus and title
// right. Whenever anything is unusual (another site, another version, no answer) the browser loads the page itself.

/** @typedef {{root: URL, leave: () => void, arrive: (main: HTMLElement) => unknown}} NavOptions */

export class Nav {
  #options;
  /** @type {AbortController|null} */
  #going = null;
  #shown = location.href;

  /** @param {NavOptions} options */
  constructor(options) {
    this.#options = options;
  }

  start() {
    history.scrollRestoration = 'manual';
    history.replaceState({ ...history.state, y: scrollY }, '');
    document.addEventListener('click', (event) => this.#clicked(event));
    window.addEventListener('popstate', () => this.#popped());
    window.addEventListener('pagehide', () => this.#rememberScroll());
  }

  /** @param {MouseEvent} event */
  #clicked(event) {
    const link = /** @type {Element} */ (event.target).closest('a[href]');
    if (!(link instanceof HTMLAnchorElement) || event.defaultPrevented || event.button !== 0) return;
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey || link.target || link.hasAttribute('download')) return;
    const to = new URL(link.href);
    if (!this.#isPage(to) || sameDocument(to, location)) return;
    event.preventDefault();
    this.go(to);
  }

  /** Go to another page of the site. @param {URL} to */
  go(to) {
    this.#rememberScroll();
    return this.#load(to, () => history.pushState({ y: 0, from: this.#shown }, '', to));
  }

  #popped() {
    const to = new URL(location.href);
    if (sameDocument(to, new URL(this.#shown))) {
      this.#shown = location.href;
      return;
    }
    this.#load(to, () => {}, history.state?.y ?? 0);
  }

  /** @param {URL} to @param {() => void} enter @param {number} [y] */
  async #load(to, enter, y = 0) {
    this.#going?.abort();
    const going = (this.#going = new AbortController());
    try {
      const reply = await fetch(to, { signal: going.signal, credentials: 'same-origin' });
      const html = reply.ok && !reply.redirected && reply.headers.get('content-type')?.startsWith('text/html');
      if (!html) throw new Error('not a page');
      const next = new DOMParser().parseFromString(await reply.text(), 'text/html');
      if (going.signal.aborted) return;
      if (!sameBuild(next, to)) throw new Error('another version');
      enter();
      this.#swap(next, to, y);
    } catch (error) {
      if (!going.signal.aborted) location.assign(to);
    }
  }

  /** @param {Document} next @param {URL} to @param {number} y */
  #swap(next, to, y) {
    const { leave, arrive } = this.#options;
    leave();
    const main = /** @type {HTMLElement} */ (document.importNode(next.querySelector('main'), true));
    document.querySelector('main').replaceWith(main);
    document.title = next.title;
    document.documentElement.dataset.root = next.documentElement.dataset.root;
    for (const link of document.querySelectorAll('.top a')) {
      const here = /** @type {HTMLAnchorElement} */ (link).href === to.href.split('#')[0];
      if (here) link.setAttribute('aria-current', 'page');
      else link.removeAttribute('aria-current');
    }
    this.#shown = to.href;
    const place = to.hash.startsWith('#') && document.getElementById(decodeURIComponent(to.hash.slice(1)));
    const focus = place || main.querySelector('h1') || main;
    focus.focus({ preventScroll: true });
    if (place) place.scrollIntoView({ behavior: 'instant' });
    else scrollTo({ top: y, behavior: 'instant' });
    this.#settle(arrive(main), y);
  }

  /** Components change the height of a page: go back to where the maker was once they stand. @param {unknown} arrived @param {number} y */
  async #settle(arrived, y) {
    const [page, at] = [this.#shown, scrollY];
    const { style } = document.documentElement;
    style.overflowAnchor = 'none'; // what grows above the foot of a short page would carry it along
    await arrived;
    style.overflowAnchor = '';
    if (y && page === this.#shown && scrollY === at) scrollTo({ top: y, behavior: 'instant' });
  }

  #rememberScroll() {
    history.replaceState({ ...history.state, y: scrollY }, '');
  }

  /** @param {URL} url */
  #isPage(url) {
    const { root } = this.#options;
    if (url.origin !== root.origin || !url.pathname.startsWith(root.pathname)) return false;
    return url.pathname.endsWith('/') || url.pathname.endsWith('.html');
  }
}

/** @param {URL} a @param {URL|Location} b */
function sameDocument(a, b) {
  return a.pathname === b.pathname && a.search === b.search;
}

/** A page of a newer build must not run with the scripts of this one. @param {Document} next @param {URL} to */
function sameBuild(next, to) {
  const find = (/** @type {Document} */ page, /** @type {string} */ base) => {
    const source = page.querySelector('script[type="module"]')?.getAttribute('src');
    return source && new URL(source, base).href;
  };
  return next.querySelector('main') && find(next, to.href) === entryScript;
}

const entryScript = /** @type {HTMLScriptElement} */ (document.querySelector('script[type="module"]')).src;
