/** Seconds as a clock shows them: 4:07, or 2:04:07. @param {number} seconds */
export function spell(seconds) {
  const whole = Math.max(0, Math.floor(seconds));
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (/** @type {number} */ number) => String(number).padStart(2, '0');
  return hours ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}
