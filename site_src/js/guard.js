// The last resort, in every page before anything else: when the scripts of this site fail to start twice in a row although
// there is a network, what the service worker keeps is thrown away and the page is loaded fresh. Records are not touched.
// A plain script on its own, so that nothing it guards against can stop it.
(() => {
  const KEY = 'blankwright-failed-starts';
  const html = document.documentElement;
  const count = () => Number(sessionStorage.getItem(KEY)) || 0;
  let told = false;

  function failed() {
    if (told || 'started' in html.dataset) return;
    told = true;
    sessionStorage.setItem(KEY, String(count() + 1));
    if (count() >= 2) rescue();
  }

  async function rescue() {
    const root = new URL(html.dataset.root, location.href);
    const reply = await fetch(new URL('sw.js', root), { cache: 'no-store' }).catch(/** @returns {null} */ () => null);
    if (!reply || !reply.ok) return; // no network: what is kept here is all there is
    sessionStorage.removeItem(KEY);
    const registration = await navigator.serviceWorker?.getRegistration(root);
    await registration?.unregister();
    for (const name of await caches.keys()) if (name.startsWith(`blankwright ${root} `)) await caches.delete(name);
    location.reload();
  }

  try {
    addEventListener('error', failed, true);
    addEventListener('unhandledrejection', failed);
    addEventListener('site-started', () => sessionStorage.removeItem(KEY));
  } catch {
    // A browser that forbids even session storage has no service worker to be rescued from.
  }
})();
