// Keeps the screen on while something must stay in view. Optional: where a phone does not know it, the page says so itself.

/** @type {WakeLockSentinel|null} */
let lock = null;
let wanted = false;

/** Whether the phone can be asked. */
export function available() {
  return 'wakeLock' in navigator;
}

/** Ask to keep the screen on; true when it is kept on. The phone drops it when the page is hidden, so it is asked again. */
export async function start() {
  wanted = true;
  return acquire();
}

/** Let the screen go dark again. */
export async function stop() {
  wanted = false;
  await lock?.release();
  lock = null;
}

async function acquire() {
  if (!available() || lock) return Boolean(lock);
  try {
    lock = await navigator.wakeLock.request('screen');
    lock.addEventListener('release', () => (lock = null));
    if (!wanted) await lock.release();
  } catch {
    lock = null;
  }
  return Boolean(lock);
}

document.addEventListener('visibilitychange', () => {
  if (wanted && document.visibilityState === 'visible') acquire();
});
