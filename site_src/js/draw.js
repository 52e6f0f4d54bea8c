// A drawing as calc gives it, made into SVG. The looks are in css/components/drawing.css; the words beside it say the same.

const SVG = 'http://www.w3.org/2000/svg';

/** @typedef {{kind: string, points: number[][], look: string, text: string, anchor: string, radius: number}} Mark */
/** @typedef {{title: string, says: string, width: number, height: number, marks: Mark[]}} Drawing */

/** @param {Drawing} drawing @returns {SVGElement} */
export function draw({ width, height, marks }) {
  const picture = element('svg', { viewBox: `0 0 ${width} ${height}`, class: 'drawing__picture', 'aria-hidden': 'true' });
  picture.append(...marks.map(drawn));
  return picture;
}

/** @param {Mark} mark */
function drawn({ kind, points, look, text, anchor, radius }) {
  const looks = `mark mark--${kind} mark--${look}`;
  const [[x, y]] = points;
  if (kind === 'circle') return element('circle', { class: looks, cx: x, cy: y, r: radius });
  if (kind === 'text') {
    const words = element('text', { class: looks, x, y, 'text-anchor': anchor });
    words.textContent = text;
    return words;
  }
  const path = points.map((point) => point.join(' ')).join(' L ');
  return element('path', { class: looks, d: `M ${path}${kind === 'polygon' ? ' Z' : ''}` });
}

/** @param {string} name @param {Record<string, string|number>} attributes */
function element(name, attributes) {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  return made;
}
