/** A server in a process of its own, to be ended: node served.mjs SITE SHARED PORT; says its port. */
import { serveOnNetwork, writeBeforeTheEnd } from '../../src/scripts/network/serve.mjs';
import { openFolder } from '../../src/scripts/relay/folder.mjs';

const [site, shared, port] = process.argv.slice(2);
const served = await serveOnNetwork(String(site), Number(port), openFolder(String(shared)));
writeBeforeTheEnd(served);
console.log(String(served.port));
