/** Rule sheets in a file of their own: out and back, and what is turned away at the door, with its place. */
import { describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import { parseRules, ruleFileSchema, serialiseRules } from '../../../src/core/job/rule-file.ts';
import { drawn } from '../../draws.ts';
import { jsonSchemaOf, laidOut } from './jsonSchema.ts';
import { sampleFile } from './sample.ts';

const sheets = () => {
  const parsed = parseJob(JSON.stringify(sampleFile()));
  return (parsed as Extract<typeof parsed, { ok: true }>).job.rules;
};

const file = (rules: unknown, rest: object = {}): string =>
  JSON.stringify({ format: 'cagewright/rules', version: 1, rules, ...rest });

const faultsOf = (text: string): readonly string[] => {
  const parsed = parseRules(text);
  return parsed.ok ? [] : parsed.faults.map(({ place, message }) => `${place}: ${message}`);
};

const sheet = (checks: unknown): object => ({ sheet: 'a', checks });
const tilt = { kind: 'tilt', of: 'axis' };

describe('a file of rule sheets', () => {
  it('comes back as it was, and to the same bytes', () => {
    const text = serialiseRules(sheets());
    const back = parseRules(text);
    expect(back).toEqual({ ok: true, sheets: sheets() });
    expect(serialiseRules((back as Extract<typeof back, { ok: true }>).sheets)).toBe(text);
  });

  // After a change of the validator: npx vitest run tests/core/job/rule-file.test.ts -u
  it('docs/rules.schema.json says what the validator says', async () => {
    await expect(`${laidOut(jsonSchemaOf(ruleFileSchema))}\n`).toMatchFileSnapshot('../../../docs/rules.schema.json');
  });

  it('keeps text that would be a script as text', () => {
    const text = '<img src=x onerror=alert(1)>\u2028</script>=1+1';
    const back = parseRules(file([{ ...sheet([{ ...tilt, text, article: text }]), body: text }]));
    expect(back).toMatchObject({ ok: true, sheets: [{ body: text, checks: [{ text, article: text }] }] });
  });

  it.each([
    [
      'another format',
      file([sheet([])], { format: 'cagewright/job' }),
      'format: a job file: open it as a job; its rule sheets are in it',
    ],
    [
      'a later version',
      file([sheet([])], { version: 2 }),
      'version: 2 was made by a later version of the program, which reads up to 1',
    ],
    ['no sheet', file([]), 'rules: holds no sheet'],
    ['an unknown kind', file([sheet([{ kind: 'magic' }])]), /^rules\[0\]\.checks\[0\]\.kind: not /u],
    [
      'what its kind does not measure',
      file([sheet([{ kind: 'tilt', of: 'diameters' }])]),
      /^rules\[0\]\.checks\[0\]\.of: not /u,
    ],
    ['a limit that is text', file([sheet([tilt, { ...tilt, least: '30' }])]), 'rules[0].checks[1].least: not a number'],
    [
      'a limit beyond all',
      file([sheet([{ ...tilt, most: 1e300 }])]),
      'rules[0].checks[0].most: beyond any figure of a rule book',
    ],
    [
      'limits the wrong way round',
      file([sheet([{ ...tilt, least: 40, most: 30 }])]),
      'rules[0].checks[0].least: above the most',
    ],
    ['one sheet twice', file([sheet([]), sheet([])]), 'rules[1].sheet: "a" is there already'],
    ['a sheet that is a number', file([7]), 'rules[0]: not an object'],
    ['an id with a line break', file([{ sheet: 'a\nb', checks: [] }]), /^rules\[0\]\.sheet: /u],
    [
      'a key that every object has',
      '{"format":"cagewright/rules","version":1,"rules":[{"sheet":"a","__proto__":{}}]}',
      /__proto__/u,
    ],
    ['half a file', serialiseRules(sheets()).slice(0, 300), /line \d+/u],
  ])('%s is turned away with its place', (_what, text, fault) => {
    const faults = faultsOf(text);
    expect(faults.length).toBeGreaterThan(0);
    if (typeof fault === 'string') expect(faults).toContain(fault);
    else expect(faults.join('\n')).toMatch(fault);
  });

  it('very many articles are too many, and very many sheets', () => {
    const many = Array.from({ length: drawn(2e4, 1e6) }, () => '{"kind":"ask"}').join();
    expect(faultsOf(`{"format":"cagewright/rules","version":1,"rules":[{"sheet":"a","checks":[${many}]}]}`)).toEqual([
      'rules[0].checks: more than 300 articles',
    ]);
    expect(faultsOf(file(Array.from({ length: drawn(5e3, 2e5) }, (_, i) => ({ sheet: `s${i}` }))))).toEqual([
      'rules: more than 30',
    ]);
  });
});
