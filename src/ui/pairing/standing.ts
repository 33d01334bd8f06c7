/** How the devices stand, in words: in the dialog, on the band and aloud. */
import type { PairingState } from '../../store/pairing/types.ts';

export type Stands = Pick<PairingState, 'standing' | 'devices' | 'held'>;

export interface StandingWords {
  readonly title: string;
  /** What follows of it; '' where nothing does. */
  readonly words: string;
}

export function standingInWords({ standing, devices }: Stands): StandingWords {
  const others = devices.filter(({ isSelf }) => !isSelf).length;
  switch (standing) {
    case 'off':
      return { title: 'This job is on this device alone', words: '' };
    case 'joining':
      return {
        title: 'Joining',
        words: 'The job comes as soon as the other device answers. Until then what you see here is another job.',
      };
    case 'joined':
      if (devices.length === 0) return { title: 'Joined', words: '' }; // who else is there is not said yet
      return others === 0
        ? { title: 'Shared, nobody else is here yet', words: 'Scan the address with the phone, or type it in there.' }
        : { title: `Joined, with ${others === 1 ? '1 other device' : `${others} other devices`}`, words: '' };
    case 'away':
      return { title: 'The network is away', words: 'What you do here goes over when it is back.' };
    case 'out':
      return {
        title: 'The address is no longer valid',
        words: 'Scan the new one, on the computer that shares the job. What you do here is kept until then.',
      };
    case 'full':
      return {
        title: 'The job is too large to be shared',
        words: 'The server takes no more of it. What you do here stays on this device: send the job as a file instead.',
      };
  }
}

/** On the band, where there is little room. */
export function shortStanding({ standing, devices, held }: Stands): string {
  if (held.length > 0) return 'stuck';
  switch (standing) {
    case 'off':
      return '';
    case 'joining':
      return 'joining';
    case 'joined':
      return devices.length === 0 ? 'joined' : `${devices.length}`;
    case 'away':
      return 'away';
    case 'out':
    case 'full':
      return 'out';
  }
}
