/** What a page puts into the browser's settings as it goes. */
import { expect, it } from 'vitest';
import { createLastWords } from '../../../src/store/storage/last-words.ts';
import { fakeSettings } from './fake-database.ts';

const WORDS = { name: 'Käfig ½ in 檻', text: '{"a":"\\u0000"}', steps: [1, null, { at: 0.1 + 0.2 }] };

it('is found as it was put, by its name, beside what others keep there', () => {
  const settings = fakeSettings();
  settings.setItem('cagewright.hints', 'true');
  createLastWords('other ', () => settings).put('a', 1);
  const words = createLastWords('last ', () => settings);
  words.put('tab slot', WORDS);
  expect([...words.found()]).toEqual([['tab slot', WORDS]]);
  words.forget('tab slot');
  expect(words.found().size).toBe(0);
  expect(settings.length).toBe(2);
});

it('is a fifth of a job’s text: a browser has room for five million characters', () => {
  const settings = fakeSettings();
  const text = JSON.stringify(
    Array.from({ length: 2000 }, (_, nth) => ({ id: `n${nth}`, position: [nth, 600.467, 576.392] })),
  );
  createLastWords('', () => settings).put('job', { text });
  expect(settings.getItem('job')!.length).toBeLessThan(text.length / 5);
});

it('what cannot be unpacked is found as it lies there', () => {
  const settings = fakeSettings();
  settings.setItem('last a', 'no words');
  expect(createLastWords('last ', () => settings).found()).toEqual(new Map([['a', 'no words']]));
});

it('a browser that has its settings off, or full, does no harm', () => {
  const off = createLastWords('last ', () => {
    throw new DOMException('off', 'SecurityError');
  });
  const settings = fakeSettings();
  settings.setItem = () => {
    throw new DOMException('no room', 'QuotaExceededError');
  };
  const full = createLastWords('last ', () => settings);
  for (const words of [off, full]) {
    words.put('a', WORDS);
    words.forget('a');
    expect(words.found().size).toBe(0);
  }
});
