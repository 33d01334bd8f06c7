/** A channel between the tabs of one browser; null where the browser has none. */
export function openChannel(name: string): BroadcastChannel | null {
  try {
    return new BroadcastChannel(name);
  } catch {
    return null;
  }
}
