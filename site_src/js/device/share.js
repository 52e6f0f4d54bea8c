// Hands a text or an address to the phone. Each returns true when done, false when not, null when the maker changed their mind.

/** Whether the phone has a share sheet of its own. */
export function available() {
  return typeof navigator.share === 'function';
}

/** @param {string} text */
export async function copyText(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

/** Share an address, or copy it where nothing can be shared. @param {{title: string, url: string}} what */
export async function shareAddress(what) {
  if (!available()) return copyText(what.url);
  try {
    await navigator.share(what);
    return null;
  } catch (error) {
    if (/** @type {Error} */ (error).name === 'AbortError') return null;
    return copyText(what.url);
  }
}
