// The button that turns the dark theme on and off. theme.js puts the choice back before the next first paint.

/** @param {HTMLElement} button */
export function wireTheme(button) {
  const root = document.documentElement;
  const show = () => button.setAttribute('aria-pressed', String(root.dataset.theme === 'dark'));
  button.addEventListener('click', () => {
    if (root.dataset.theme === 'dark') delete root.dataset.theme;
    else root.dataset.theme = 'dark';
    try {
      localStorage.setItem('blankwright-theme', root.dataset.theme ?? 'light');
    } catch {
      // The choice then lasts as long as the page: there is nothing better to do, and nothing is lost.
    }
    show();
  });
  show();
}
