/**
 * Job files that must be refused: each gives exit 1 and exactly one line that names the place, and leaves no file
 * behind. The job beneath them is one bent tube in a plane.
 */
import { describe, expect, it } from 'vitest';
import { runFab } from '../command-line.ts';

type Loose = { [key: string]: any }; // eslint-disable-line typescript/no-explicit-any

const sound = (): Loose => ({
  format: 'cagewright/job',
  version: 1,
  name: 'Bench',
  lengthUnit: 'mm',
  points: [],
  sections: [{ id: 'tube', name: '45 x 2.5', outerDiameter: 45, wall: 2.5, material: '' }],
  dies: [{ id: 'die', name: '3 D', outerDiameter: 45, centrelineRadius: 135 }],
  nodes: [
    { id: 'a', at: { kind: 'fixed', position: [0, 0, 0] } },
    { id: 'b', at: { kind: 'fixed', position: [1000, 0, 0] } },
    { id: 'c', at: { kind: 'fixed', position: [1000, 800, 0] } },
  ],
  members: [{ id: 'bar', name: 'Bar', role: 'bar', path: ['a', 'b', 'c'], section: 'tube', die: 'die' }],
  envelopes: [],
});

/** The sound job with one thing changed. */
function changed(change: (job: Loose) => void): string {
  const job = sound();
  change(job);
  return JSON.stringify(job);
}

/** The sound job's text with one piece replaced, for what JSON.stringify would not write. */
function rewritten(piece: string, by: string): string {
  const text = JSON.stringify(sound());
  expect(text).toContain(piece);
  return text.replace(piece, by);
}

const withNode = (at: Loose) => changed((job) => job['nodes'].push({ id: 'p', at }));

const DEEP = 50_000;

const BAD: readonly (readonly [what: string, text: string, line: string])[] = [
  // Not JSON, or no job
  ['is not JSON', 'a cage', 'line 1, column 1: unexpected "a"'],
  ['is empty', '', 'the file is empty'],
  ['is cut off', '{ "format": "cagewr', 'line 1, column 13: a closing quote is missing'],
  ['is a list', '[]', 'not a job: the file holds no object'],
  ['holds a comment', rewritten('{', '{ // mine\n'), 'line 1, column 3: comments are not part of JSON'],
  [
    'is a fabrication file',
    changed((job) => (job['format'] = 'cagewright/fabrication')),
    'format: a fabrication file, which is made from a job: open the job file that it was made from',
  ],
  [
    'is of a later version',
    changed((job) => (job['version'] = 2)),
    'version: 2 was made by a later version of the program, which reads up to 1',
  ],
  // Ids and references
  [
    'names a node that is not there',
    changed((job) => (job['members'][0].path[1] = 'a-fot')),
    'members[0].path[1]: no node "a-fot"',
  ],
  [
    'names a section that is not there',
    changed((job) => (job['members'][0].section = 'toString')),
    'members[0].section: no section "toString"',
  ],
  ['names a die that is not there', changed((job) => (job['members'][0].die = 'x')), 'members[0].die: no die "x"'],
  [
    'lies on a twin that is not there',
    withNode({ kind: 'on', member: "bar'", from: 'start', distance: 5 }),
    'nodes[3].at.member: no member "bar\'": "bar" is not mirrored',
  ],
  [
    'copes to a member that is not there',
    changed((job) => (job['members'][0].ends = [{ fit: 'cope', against: ['zz'] }, { fit: 'auto' }])),
    'members[0].ends[0].against[0]: no member "zz"',
  ],
  [
    'has an id twice',
    changed((job) => job['nodes'].push({ id: 'a', at: { kind: 'fixed', position: [9, 9, 9] } })),
    'nodes[3].id: "a" is already nodes[0]',
  ],
  [
    'has a loop between two nodes',
    changed((job) => {
      job['nodes'][0].at = { kind: 'between', nodes: ['b', 'x'], fraction: 0.5 };
      job['nodes'].push({ id: 'x', at: { kind: 'between', nodes: ['a', 'b'], fraction: 0.5 } });
    }),
    'nodes[0].at: reference loop: node "a" needs node "x" needs node "a"',
  ],
  [
    'has a node on the tube that it carries',
    changed((job) => (job['nodes'][0].at = { kind: 'on', member: 'bar', from: 'start', distance: 10 })),
    'nodes[0].at: reference loop: node "a" needs member "bar" needs node "a"',
  ],
  // Numbers
  [
    'holds NaN',
    rewritten('[1000,800,0]', '[NaN,800,0]'),
    expect.stringMatching(/^line 1, column \d+: unexpected "NaN"$/u),
  ],
  [
    'holds NaN as text',
    changed((job) => (job['nodes'][2].at.position[0] = 'NaN')),
    'nodes[2].at.position[0]: not a number',
  ],
  ['holds an infinity', rewritten('[1000,800,0]', '[1e999,800,0]'), 'nodes[2].at.position[0]: not a finite number'],
  [
    'goes beyond 100 m',
    changed((job) => (job['nodes'][2].at.position[1] = -100_001)),
    'nodes[2].at.position[1]: beyond 100 m',
  ],
  [
    'has a tube of a kilometre',
    changed((job) => (job['sections'][0].outerDiameter = 1e6)),
    'sections[0].outerDiameter: beyond 1000 mm',
  ],
  [
    'has a wall as thick as the radius',
    changed((job) => (job['sections'][0].wall = 22.5)),
    "sections[0].wall: 22.5 is not less than the tube's radius, 22.5",
  ],
  // Paths and places
  [
    'doubles back',
    changed((job) => (job['nodes'][2].at.position = [500, 0, 0])),
    'members[0].path[1]: the path doubles back at "b"',
  ],
  [
    'stays in one place',
    changed((job) => (job['nodes'][1].at.position = [0, 0, 0])),
    'members[0].path[1]: "b" stands at the same place as "a" before it',
  ],
  [
    'bends without a die',
    changed((job) => delete job['members'][0].die),
    'members[0].die: the path bends at "b", so the member needs a die',
  ],
  [
    'has a node beyond the end of its tube',
    withNode({ kind: 'on', member: 'bar', from: 'start', distance: 99_999 }),
    // 1000 + 800 less the gain of one 90 degree bend at R 135, 57.942 (published with the bend table: 2T - Rt)
    'nodes[3].at.distance: 99999 mm along lies beyond the ends of "bar", which is 1742.058 mm long',
  ],
  [
    'has a node at a bend that is not there',
    withNode({ kind: 'on', member: 'bar', bend: 3, where: 'start', distance: 0 }),
    'nodes[3].at.bend: "bar" has 1 bend: there is no bend 3',
  ],
  [
    'has a ray that goes the other way',
    withNode({ kind: 'ray', from: 'a', direction: [-1, 0, 0], until: { axis: 'x', value: 10 } }),
    'nodes[3].at.direction: from there this direction never reaches x = 10',
  ],
  [
    'has a node at a height that its tube never reaches',
    withNode({ kind: 'on', member: 'bar', until: { axis: 'z', value: 0.001 } }),
    'nodes[3].at.until: "bar" never comes to z = 0.001',
  ],
  [
    'has a node at a coordinate for the second time where the tube has it once',
    withNode({ kind: 'on', member: 'bar', until: { axis: 'x', node: 'a', plus: 500 }, nth: 2 }),
    'nodes[3].at.nth: "bar" only comes to x = 500 once: there is no place 2',
  ],
  [
    'has a crossing whose line has no length',
    withNode({ kind: 'crossing', member: 'bar', line: ['b', "b'"] }),
    `nodes[3].at.line: "b" and "b'" stand at the same place: no line runs through them`,
  ],
  [
    'has a crossing whose line runs along a straight tube',
    changed((job) => {
      delete job['members'][0].die;
      job['members'][0].path = ['a', 'b'];
      job['nodes'].push({ id: 'p', at: { kind: 'crossing', member: 'bar', line: ['q', 'c'] } });
      job['nodes'].push({ id: 'q', at: { kind: 'lined-up', x: { node: 'a' }, y: { node: 'c' }, z: { node: 'c' } } });
    }),
    'nodes[3].at.line: the line runs along "bar": no place of it is nearer than another',
  ],
  [
    'has a crossing on a tube that is drawn through it',
    changed((job) => (job['nodes'][1].at = { kind: 'crossing', member: 'bar', line: ['a', 'c'] })),
    'nodes[1].at: reference loop: node "b" needs member "bar" needs node "b"',
  ],
  [
    'has nodes in line with each other',
    changed((job) => {
      job['nodes'][0].at = { kind: 'lined-up', x: { value: 0 }, y: { value: 0 }, z: { node: "c'" } };
      job['nodes'][2].at = { kind: 'lined-up', x: { value: 1000 }, y: { node: 'a', plus: 800 }, z: { value: 0 } };
    }),
    'nodes[0].at: reference loop: node "a" needs node "c" needs node "a"',
  ],
  [
    'has a node in line 100 m and more away',
    withNode({ kind: 'lined-up', x: { node: 'b', plus: 99_999 }, y: { value: 0 }, z: { value: 0 } }),
    'nodes[3].at: lies farther than 100 m from the datum',
  ],
  [
    'is clear of a point in no direction',
    changed((job) => {
      job['points'].push({ id: 'trim', position: [0, 0, 0] });
      job['nodes'].push({ id: 'p', at: { kind: 'point', point: 'trim', clear: { direction: [0, 0, 0], gap: 25 } } });
    }),
    'nodes[3].at.clear.direction: has no length, so no direction',
  ],
  // What is meant to break in
  [
    'carries __proto__',
    rewritten('"name":"Bench"', '"__proto__":{"polluted":true},"name":"Bench"'),
    '["__proto__"]: not allowed as a name',
  ],
  [
    'carries constructor deep inside',
    rewritten('"name":"Bar"', '"constructor":1,"name":"Bar"'),
    'members[0].constructor: not allowed as a name',
  ],
  ['opens 50 000 brackets', '['.repeat(DEEP), 'line 1, column 65: nested more than 64 deep'],
  [
    'nests 50 000 objects',
    '{"a":'.repeat(DEEP) + '1' + '}'.repeat(DEEP),
    'line 1, column 321: nested more than 64 deep',
  ],
  [
    'nests 50 000 lists inside a sound job',
    rewritten('"envelopes":[]', `"envelopes":${'['.repeat(DEEP)}${']'.repeat(DEEP)}`),
    expect.stringMatching(/^line 1, column \d+: nested more than 64 deep$/u),
  ],
];

describe('a job file that', () => {
  it.each(BAD)('%s is refused', async (_, text, line) => {
    const { exit, said, complaints, files } = await runFab(text, '--formats', 'csv');
    expect({ exit, said, complaints }).toEqual({ exit: 1, said: [], complaints: [line] });
    expect([...files]).toEqual([]);
    expect(({} as Loose)['polluted']).toBeUndefined();
  });

  it('is sound is not refused: the cases above fail for the reason they name', async () => {
    expect(await runFab(JSON.stringify(sound()))).toMatchObject({ exit: 0, complaints: [] });
  });

  it('has several faults names each on its own line', async () => {
    const text = changed((job) => {
      job['sections'][0].wall = 30;
      job['members'][0].path = ['a', 'nowhere', 'c'];
    });
    expect((await runFab(text)).complaints).toEqual([
      "sections[0].wall: 30 is not less than the tube's radius, 22.5",
      'members[0].path[1]: no node "nowhere"',
    ]);
  });

  it('is named by hostile text still gives one line, without control characters', async () => {
    const text = changed((job) => (job['members'][0].section = 'x\n\u001b[31m\u202e at main (fab.ts:1:1)'));
    const { exit, complaints } = await runFab(text);
    expect(exit).toBe(1);
    expect(complaints).toHaveLength(1);
    expect(complaints[0]).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });
});
