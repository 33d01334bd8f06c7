/** What the page's own server says of pairing. It answers the machine that it runs on, and nobody else. */
import type { Offer } from './types.ts';

/** null: the page is on another machine, or its server pairs no devices; those two look alike from here. */
export const askOffer = (): Promise<Offer | null> => ask('GET');

/** A new secret, and all that came in by the old one are out; null where the server does not answer. */
export const askNewSecret = (): Promise<Offer | null> => ask('POST');

async function ask(method: 'GET' | 'POST'): Promise<Offer | null> {
  try {
    const answer = await fetch('/pairing', { method, cache: 'no-store', headers: { 'X-Cagewright': '1' } });
    return answer.ok ? readOffer(await answer.json()) : null;
  } catch {
    return null; // no server, or a page of it: a static host answers anything
  }
}

function readOffer(value: unknown): Offer | null {
  if (typeof value !== 'object' || value === null) return null;
  const { secret, addresses } = value as { secret?: unknown; addresses?: unknown };
  if (typeof secret !== 'string' || !Array.isArray(addresses)) return null;
  return { secret, addresses: addresses.filter((address) => typeof address === 'string') };
}
