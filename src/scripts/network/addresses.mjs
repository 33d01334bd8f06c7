/** Where other devices of the network reach this machine. */

/** Networks that live within a machine, or far from the shop: of virtual machines, containers and tunnels. */
const NOT_OF_THE_SHOP = /^(?:docker|br-|veth|virbr|vmnet|vbox|vEthernet|utun|tun|tap|wg|zt|tailscale)/i;

/** An address that a machine gives itself where nobody gave it one. */
const SELF_GIVEN = /^(?:169\.254\.|fe80:)/i;

/**
 * The machine's addresses, as hosts of a URL: IPv4, or IPv6 where there is none. Those that are likely to be of the shop's network come
 * first.
 *
 * @param {ReturnType<typeof import('node:os').networkInterfaces>} interfaces
 * @returns {string[]}
 */
export function hostsOf(interfaces) {
  const all = Object.entries(interfaces).flatMap(([name, addresses]) =>
    (addresses ?? []).filter(({ internal }) => !internal).map(({ family, address }) => ({ name, family, address })),
  );
  const four = all.filter(({ family }) => family === 'IPv4');
  const six = all.filter(({ family, address }) => family === 'IPv6' && !SELF_GIVEN.test(address));
  /** @param {{ name: string, address: string }} found */
  const unlikely = ({ name, address }) => Number(NOT_OF_THE_SHOP.test(name)) + 2 * Number(SELF_GIVEN.test(address));
  return (four.length > 0 ? four : six)
    .toSorted((a, b) => unlikely(a) - unlikely(b))
    .map(({ family, address }) => (family === 'IPv6' ? `[${address}]` : address));
}

/**
 * The same as addresses of a page: no slash at the end, no port where it is the usual one.
 *
 * @param {readonly string[]} hosts
 * @param {'http' | 'https'} scheme
 * @param {number} port
 */
export const addressesOf = (hosts, scheme, port) => hosts.map((host) => new URL(`${scheme}://${host}:${port}`).origin);
