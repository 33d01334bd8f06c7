/** One job on several devices of a shop: what the page shows of it. */
import type { Fault } from '../../core/job/fault.ts';

/** What the server says of pairing, to the machine that it runs on alone. */
export interface Offer {
  /** 128 bits that let a device in, as text that fits an address. */
  readonly secret: string;
  /** Where other devices of the shop's network reach the server: http://192.168.1.20:4680. None where no network is there. */
  readonly addresses: readonly string[];
}

/**
 * 'off': the job is on this device alone. 'joining': the first answer of the others is waited for. 'joined'. 'away': the network or the server is gone, and what is
 * done here goes over once it is back. 'out': the secret is not let in any more. 'full': the relay takes no more of this job, and what is done
 * here from now on stays here.
 */
export type Standing = 'off' | 'joining' | 'joined' | 'away' | 'out' | 'full';

export interface Device {
  readonly name: string;
  /** It is this one. */
  readonly isSelf: boolean;
}

/** A field that was written on two devices, neither knowing of the other: the later one counts. */
export interface Overridden {
  /** Fit for a key, and for `take`. */
  readonly key: string;
  /** Of what: the record's list, id or natural name, and field; in words by whoever shows it. */
  readonly list: string;
  readonly record: string;
  readonly field: string;
  /** The device whose value does not count, its value, and the one that counts; undefined: it was taken out. */
  readonly by: string;
  readonly theirs: unknown;
  readonly counts: unknown;
}

/** What was done on another device, newest first. */
export interface Came {
  readonly by: string;
  /** As its undo button says it. */
  readonly label: string;
}

export interface PairingState {
  /** What the server offers; null: not asked yet, or this is not the machine that it runs on; 'none': it pairs no devices. */
  readonly offer: Offer | null | 'none';
  readonly standing: Standing;
  /** What the other devices call this one. */
  readonly name: string;
  /** All that are joined now, this one among them; empty unless joined. */
  readonly devices: readonly Device[];
  /** Why the job as all have made it cannot be shown; what is shown is then the last that could. Empty: nothing is held back. */
  readonly held: readonly Fault[];
  readonly overridden: readonly Overridden[];
  readonly came: readonly Came[];
  /** What another device opens to join: one address for each of the server's; empty unless paired. */
  readonly invitations: readonly string[];
}

export interface PairingActions {
  /** Asks the server what it offers. */
  ask(): Promise<void>;
  /** The open job is now shared. Needs an offer. */
  share(): Promise<void>;
  /** This device goes on alone, with the job as it is. */
  leave(): void;
  rename(name: string): void;
  /** A new secret: every other device is out until it has the new address. */
  newSecret(): Promise<void>;
  /** The value that did not count is written again, as an edit. */
  take(overridden: Overridden): void;
  /** It is seen, and not listed any more. */
  dismiss(overridden: Overridden): void;
}
