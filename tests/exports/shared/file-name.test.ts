import { describe, expect, it } from 'vitest';
import { fileNameFor } from '../../../src/exports/shared/file-name.ts';

describe('the name of a saved job', () => {
  it('is the job’s own', () => {
    expect(fileNameFor('Gravel saloon, full cage')).toBe('Gravel saloon, full cage.cagewright.json');
    expect(fileNameFor('Überrollbügel №2')).toBe('Überrollbügel №2.cagewright.json');
  });
  it.each([
    ['../../etc/passwd', '-..-etc-passwd'],
    ['CON', 'CON-job'],
    ['nul.backup', 'nul-job.backup'],
    ['Console', 'Console'],
    [' .hidden. ', 'hidden'],
    ['a\ud800b', 'a-b'],
    ['\u2028', '-'],
    [' ', 'job'],
  ])('of %j is one that every file system takes', (name, file) => {
    expect(fileNameFor(name)).toBe(`${file}.cagewright.json`);
  });
  it('of a long name is cut between characters, and short enough in bytes', () => {
    // 40 characters of 4 bytes and 100 of 3 pass 200 bytes; 99 letters and a character of two units may not be halved.
    for (const name of ['🏁'.repeat(120), '主'.repeat(120), `${'x'.repeat(99)}🏁🏁`]) {
      const file = fileNameFor(name);
      expect(new TextEncoder().encode(file).length).toBeLessThanOrEqual(255);
      expect(file).not.toMatch(/\p{Cs}/u);
    }
    expect(fileNameFor(`${'x'.repeat(98)}. rest`)).toBe(`${'x'.repeat(98)}.cagewright.json`);
  });
});
