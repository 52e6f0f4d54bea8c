// Runs before the first paint: says that scripts run, and puts back the theme this device was left in.
// The theme is the one thing kept in localStorage, because only that can be read before painting.
(() => {
  const root = document.documentElement;
  root.dataset.script = 'on';
  try {
    if (localStorage.getItem('blankwright-theme') === 'dark') root.dataset.theme = 'dark';
  } catch {
    // A browser that keeps nothing shows the light theme.
  }
})();
