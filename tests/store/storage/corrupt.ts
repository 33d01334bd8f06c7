/** Records as a browser's store could hold them and should not: each with what is wrong with it. */
const text = JSON.stringify({
  format: 'cagewright/job',
  version: 1,
  name: 'Spoilt',
  lengthUnit: 'mm',
});

const sound = {
  kept: { slot: 'spoilt', name: 'Spoilt', text, history: null, fileName: '', station: 'frame', savedAt: 1.8e12 },
  stamp: { tab: 't', count: 3 },
};
const but = (changes: object): unknown => ({ ...sound, kept: { ...sound.kept, ...changes } });
const stamped = (stamp: unknown): unknown => ({ ...sound, stamp });

/** For the slot `spoilt`. Each is newer than any record with an earlier date. */
export const CORRUPT_DOCUMENTS: readonly (readonly [string, unknown])[] = [
  ['null', null],
  ['a word', 'nonsense'],
  ['an empty object', {}],
  ['a list', [sound]],
  ['without a stamp', { kept: sound.kept }],
  ['with a stamp that is a word', stamped('me')],
  ['with a stamp that counts NaN', stamped({ tab: 't', count: Number.NaN })],
  ['with a stamp that counts Infinity', stamped({ tab: 't', count: Infinity })],
  ['with a stamp that counts words', stamped({ tab: 't', count: '3' })],
  ['with a stamp beyond counting', stamped({ tab: 't', count: 2 ** 60 })],
  ['with a stamp of nobody', stamped({ count: 3 })],
  ['without a job', { stamp: sound.stamp }],
  ['without a text', but({ text: undefined })],
  ['with a text that is a number', but({ text: 7 })],
  ['with a text that is cut short', but({ text: text.slice(0, 40) })],
  ['with a text of another format', but({ text: '{"format":"other"}' })],
  ['with a text of nothing', but({ text: '' })],
  ['with a text in which a reference leads nowhere', but({ text: text.replace('}', ',"members":[{"id":"a"}]}') })],
  ['without a date', but({ savedAt: undefined })],
  ['with a date that is NaN', but({ savedAt: Number.NaN })],
  ['with a date beyond all dates', but({ savedAt: 1e300 })],
  ['with a date before all dates', but({ savedAt: -5 })],
  ['with a date in words', but({ savedAt: 'today' })],
  ['with a name that is an object', but({ name: { a: 1 } })],
  ['of another slot', but({ slot: 'elsewhere' })],
];

const version = { savedAt: 5, name: 'Spoilt', text, slot: 's' };

/** `savedAt` is the key, so that is a valid one in each. */
export const CORRUPT_VERSIONS: readonly (readonly [string, object])[] = [
  ['without a name', { ...version, name: undefined }],
  ['with a name that is an object', { ...version, name: { a: 1 } }],
  ['with a date in words', { ...version, savedAt: 'today' }],
  ['with a date without end', { ...version, savedAt: Infinity }],
  ['with a date that is a list', { ...version, savedAt: [1] }],
  ['without a text', { ...version, text: undefined }],
  ['with a slot that is a number', { ...version, slot: 7 }],
];
