/** Seconds as a clock shows them: 4:07, or 2:04:07. @param {number} seconds */
export function spell(seconds) {
  const whole = Math.max(0, Math.floor(seconds));
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (/** @type {number} */ number) => String(number).padStart(2, '0');
  return hours ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}

/** What belongs together stays on one line: a part and its weight, a figure and its unit, a sum and its plus. @param {string} text */
export function glue(text) {
  return text.replace(/ (?=\+)/g, '\u00a0').replace(/\b([A-Z]) (?=\d)|(\d) (?=(?:[a-zA-Z]{1,3}|%)(?![a-zA-Z]))/g, '$1$2\u00a0');
}
