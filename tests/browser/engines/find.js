// Finds what a person would name: a role and an accessible name. Runs inside the page in every engine, so that all
// three answer the same way. `blankwrightTest` is the only name it leaves.
(() => {
  if (window.blankwrightTest) return;
  const ROLES = {
    alert: '[role=alert]',
    button: 'button, [role=button], input[type=submit], summary',
    checkbox: 'input[type=checkbox], [role=checkbox]',
    combobox: 'select, [role=combobox]',
    dialog: 'dialog[open], [role=dialog]',
    group: 'fieldset, [role=group], [role=radiogroup]',
    heading: 'h1, h2, h3, h4, h5, h6, [role=heading]',
    link: 'a[href]',
    listitem: 'li',
    radio: 'input[type=radio], [role=radio]',
    region: 'section, [role=region]',
    status: 'output, [role=status], [aria-live]',
    table: 'table',
    textbox: 'input:not([type]), input[type=text], input[type=search], textarea',
  };
  const squeeze = (text) => text.replace(/\s+/g, ' ').trim();

  /** Text as it is read out: without what is hidden from everybody or from screen readers. */
  function read(node) {
    if (node.nodeType === Node.TEXT_NODE) return node.data;
    if (!(node instanceof Element) || node.getAttribute('aria-hidden') === 'true') return '';
    if (['SCRIPT', 'STYLE', 'TEMPLATE'].includes(node.tagName) || getComputedStyle(node).display === 'none') return '';
    if (node.tagName === 'BR') return ' ';
    const text = [...node.childNodes].map(read).join('');
    return /^(inline|contents)/.test(getComputedStyle(node).display) ? text : ` ${text} `;
  }

  function name(element) {
    const ids = element.getAttribute('aria-labelledby');
    if (ids) return squeeze(ids.split(/\s+/).map((id) => read(document.getElementById(id) ?? new Text(''))).join(' '));
    if (element.getAttribute('aria-label')) return squeeze(element.getAttribute('aria-label'));
    if (element.labels?.length) return squeeze([...element.labels].map(read).join(' '));
    if (element.tagName === 'FIELDSET') return squeeze(read(element.querySelector('legend') ?? new Text('')));
    if (element.tagName === 'TABLE') return squeeze(read(element.querySelector('caption') ?? new Text('')));
    if (element.tagName === 'INPUT' && element.type === 'submit') return element.value;
    return squeeze(read(element));
  }

  /** Shown at all: has a box (or is a form control whose label has one) and no ancestor hides it. */
  function shown(element) {
    const box = touchable(element);
    const { width, height } = box.getBoundingClientRect();
    return width > 0 && height > 0 && getComputedStyle(box).visibility === 'visible' && !element.closest('[inert]');
  }

  /** What a finger would touch: a hidden radio button is pressed by its label. */
  function touchable(element) {
    const { width, height } = element.getBoundingClientRect();
    const tiny = width < 4 || height < 4 || getComputedStyle(element).opacity === '0';
    return tiny && element.labels?.length ? element.labels[0] : element;
  }

  function all({ role, name: wanted, exact, css, within }) {
    const place = within ? document.querySelector(within) : document;
    if (!place) return [];
    const selector = css ?? ROLES[role];
    if (!selector) throw new Error(`no such role here: ${role}`);
    return [...place.querySelectorAll(selector)].filter((element) => {
      if (!shown(element)) return false;
      if (wanted === undefined || wanted === null) return true;
      const called = name(element);
      return exact ? called === wanted : called.toLowerCase().includes(wanted.toLowerCase());
    });
  }

  /** The first match, a whole-name match before a part of a name. */
  function one(what) {
    const found = what.exact ? [] : all({ ...what, exact: true });
    return (what.name && found[0]) || all(what)[0] || null;
  }

  const frame = () => new Promise((done) => (document.hidden ? setTimeout(done, 16) : requestAnimationFrame(done)));

  /** Where to press, once the element is shown, at rest, enabled and not covered; else why not. */
  async function aim(what) {
    const element = one(what);
    if (!element) return { why: 'not on the page' };
    if (element.disabled || element.getAttribute('aria-disabled') === 'true') return { why: 'disabled' };
    const target = touchable(element);
    const first = spot(target, element);
    if (first.why) target.scrollIntoView({ block: 'center', inline: 'nearest', behavior: 'instant' });
    const still = target.getBoundingClientRect();
    await frame();
    await frame();
    const box = target.getBoundingClientRect();
    if (Math.abs(box.top - still.top) > 0.5 || Math.abs(box.left - still.left) > 0.5) return { why: 'moving' };
    return spot(target, element);
  }

  /** The middle of what is to be pressed, if that is what a press there would hit. */
  function spot(target, element) {
    const box = target.getClientRects()[0] ?? target.getBoundingClientRect();
    const x = box.left + box.width / 2;
    const y = box.top + box.height / 2;
    const hit = document.elementFromPoint(x, y);
    const label = element.labels && [...element.labels].some((each) => each.contains(hit));
    if (!hit || !(target.contains(hit) || label)) {
      return { why: `covered by ${hit ? hit.outerHTML.slice(0, 120) : 'nothing on the screen'} at ${x},${y}` };
    }
    return { x, y };
  }

  window.blankwrightTest = { all, one, aim, name, read: (element) => squeeze(read(element)), shown };
})();
