/** What is said on the terminal when the program is served on the network. */
import { encodeQR } from 'qr';

/** White on black whatever the terminal's own colours are, so that a camera reads it. */
const WHITE_ON_BLACK = '\u001b[97;40m';
const AS_BEFORE = '\u001b[0m';

/**
 * A QR code of half blocks, two rows a line.
 *
 * @param {string} text
 * @param {boolean} isColoured the terminal takes colours
 */
function qrLines(text, isColoured) {
  const lines = encodeQR(text, 'ascii').trimEnd().split('\n');
  return isColoured ? lines.map((line) => WHITE_ON_BLACK + line + AS_BEFORE) : lines;
}

/**
 * @param {{ readonly addresses: readonly string[], readonly shared: string, readonly isSecure: boolean, readonly isColoured: boolean }} served
 * @returns {string[]} lines
 */
export function networkLines({ addresses, shared, isSecure, isColoured }) {
  const [first, ...others] = addresses.map((address) => `${address}/`);
  if (first === undefined)
    return ['On the network: nowhere. This machine has no address there; is the cable in, or the Wi-Fi on?'];
  return [
    `On the network:       ${first}`,
    ...others.map((address) => `                      ${address}`),
    '',
    ...qrLines(first, isColoured),
    '',
    'That opens the program on another device, with a job of its own. To have one job on both, open the program on this',
    'machine by its localhost address: Menu, Phone at the bender, Share this job. The code shown there lets a phone in.',
    '',
    ...(isSecure
      ? []
      : [
          'This is plain http: whatever goes over the network, jobs and the secret that lets devices in, can be read by',
          'whoever is on it. --cert FILE --key FILE mend this; docs/hosting.md says how to make the two.',
        ]),
    `Shared jobs are kept in ${shared}`,
  ];
}
