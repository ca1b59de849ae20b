// Being called off, for those who wait.

/** A signal as something to wait for; it never resolves. */
export function signalled(signal: AbortSignal | undefined) {
  let release = () => {};
  const aborted = new Promise<never>((_, reject) => {
    if (signal === undefined) return;
    const off = () => reject(signal.reason as Error);
    signal.addEventListener("abort", off, { once: true });
    release = () => signal.removeEventListener("abort", off);
  });
  aborted.catch(() => {});
  return { aborted, release };
}
