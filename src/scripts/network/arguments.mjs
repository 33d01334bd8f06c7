/** What `npm start` was asked for. */
import { parseArgs } from 'node:util';

/**
 * Reads the words after `npm start --`. What cannot be meant is told in a sentence.
 *
 * @param {string[]} args
 * @returns {{ readonly trouble: string } | { readonly network: boolean, readonly pair?: { readonly cert: string, readonly key: string } }}
 */
export function readArguments(args) {
  const { tokens } = parseArgs({
    args,
    options: { network: { type: 'boolean' }, cert: { type: 'string' }, key: { type: 'string' } },
    strict: false, // its own sentences speak of programs, not of this one
    tokens: true,
  });
  let network = false;
  /** @type {{ cert?: string, key?: string }} */
  const files = {};
  for (const token of tokens) {
    const isOption = token.kind === 'option';
    if (isOption && token.rawName === '--network' && token.value === undefined) network = true;
    else if (isOption && (token.rawName === '--cert' || token.rawName === '--key')) {
      if (!token.value || token.value.startsWith('-')) return { trouble: `${token.rawName} needs the name of a file.` };
      files[token.rawName === '--cert' ? 'cert' : 'key'] = token.value;
    } else {
      const word = isOption ? args[token.index] : token.kind === 'positional' ? token.value : '--';
      return { trouble: `${word} is unknown here: there are --network, and with it --cert FILE and --key FILE.` };
    }
  }
  const { cert, key } = files;
  if (cert === undefined && key === undefined) return { network };
  if (cert === undefined) return { trouble: '--key needs --cert beside it: the two files are a pair.' };
  if (key === undefined) return { trouble: '--cert needs --key beside it: the two files are a pair.' };
  if (!network) return { trouble: '--cert and --key are for --network: this machine alone needs neither.' };
  return { network, pair: { cert, key } };
}
