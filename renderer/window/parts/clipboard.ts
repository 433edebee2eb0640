/** Text of a client on the clipboard: it goes with the lock, as far as the system lets a window clear it. */
let copied = false;

/** @throws when the clipboard cannot be used */
export async function copyText(text: string): Promise<void> {
  await navigator.clipboard.writeText(text);
  copied = true;
}

/** Takes away what this window copied; what was copied elsewhere since then goes too, for it cannot be read. */
export async function clearCopied(): Promise<void> {
  if (!copied) return;
  try {
    await navigator.clipboard.writeText('');
    copied = false;
  } catch {
    // Not the window in front: tried again when it comes to the front.
    addEventListener('focus', () => void clearCopied(), { once: true });
  }
}
