/** All that a person may bring back: dated copies, what was last saved in other slots, and what was set aside. */
import type { Copy, KeptVersion, Persistence } from '../storage/persistence.ts';
import { damagedFrom } from '../storage/records.ts';
import type { Version } from '../types.ts';

/** Newest first, without the slot `here`; null where the storage cannot be reached. What is found unsound is set aside. */
export async function earlierVersions(
  persistence: Persistence,
  here: string,
  now: number,
): Promise<readonly Version[] | null> {
  try {
    const slots = (await persistence.slots()).filter((slot) => slot !== here);
    const dated = await persistence.versions().catch(() => []);
    const copies = await Promise.all(slots.map((slot) => persistence.copies(slot)));
    await Promise.all(copies.flat().map((copy) => setAsideIfUnsound(copy, now)));
    const elsewhere = copies.flatMap(latestSound).filter(({ text }) => !dated.some((one) => one.text === text));
    const damaged = await persistence.damaged().catch(() => []);
    const own = (one: KeptVersion): Version => versionOf(one, one.slot === here);
    const others = elsewhere.map((one) => versionOf(one, false));
    return [...dated.map(own), ...others, ...damaged].toSorted((a, b) => b.savedAt - a.savedAt);
  } catch {
    return null;
  }
}

const versionOf = ({ savedAt, name, text }: Version, isOwn: boolean): Version => ({
  savedAt,
  name,
  text,
  ...(!isOwn && { isOther: true }),
});

function latestSound(copies: readonly Copy[]): readonly Version[] {
  const sound = copies.find(({ checked }) => checked.ok)?.checked;
  return sound?.ok ? [sound.value.kept] : [];
}

/** One that cannot be moved, since the storage is full or broken, stays where it is. */
async function setAsideIfUnsound({ found, checked, setAside }: Copy, now: number): Promise<void> {
  if (!checked.ok) await setAside(damagedFrom(found, checked.why, now)).catch(() => undefined);
}
