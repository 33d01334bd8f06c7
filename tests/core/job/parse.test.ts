import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultLine } from '../../../src/core/job/fault.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { sampleFile, sampleJob, withValue } from './sample.ts';
import { drawn } from '../../draws.ts';

const lines = (text: string): readonly string[] => {
  const parsed = parseJob(text);
  return parsed.ok ? [] : parsed.faults.map(faultLine);
};
const head = '"format": "cagewright/job", "version": 1';

describe('a good file', () => {
  it('comes through whole, with the keys of other builds', () => {
    expect(parseJob(JSON.stringify(sampleFile()))).toEqual({ ok: true, job: sampleJob() });
  });

  it('may leave out what has a natural value', () => {
    const text = `{ ${head},
      "points": [{ "id": "p", "position": [1, 2, 3] }],
      "sections": [{ "id": "s", "outerDiameter": 40, "wall": 3 }],
      "dies": [{ "id": "d", "outerDiameter": 40, "centrelineRadius": 120 }],
      "nodes": [
        { "id": "a", "at": { "kind": "point", "point": "p" } },
        { "id": "b", "at": { "kind": "on", "member": "m", "bend": 1, "where": "end" } },
        { "id": "c", "name": "C", "at": { "kind": "on", "member": "m", "from": "end", "distance": 5 } } ],
      "members": [
        { "id": "m", "path": ["a", "a'"], "section": "s" },
        { "id": "n", "path": ["b", "c"], "section": "s", "ends": [{ "fit": "cope", "against": ["m"] }, { "fit": "square" }] } ],
      "envelopes": [{ "id": "e", "kind": "box", "centre": [0, 0, 1000], "size": [1, 2, 3] }] }`;
    expect(parseJob(text)).toEqual({
      ok: true,
      job: {
        format: 'cagewright/job',
        version: 1,
        name: 'Untitled job',
        lengthUnit: 'mm',
        points: [{ id: 'p', name: 'p', position: [1, 2, 3] }],
        bodyLines: [],
        sections: [{ id: 's', name: 's', outerDiameter: 40, wall: 3, material: '' }],
        dies: [
          {
            id: 'd',
            name: 'd',
            outerDiameter: 40,
            centrelineRadius: 120,
            clampOffset: 0,
            leastStraight: 0,
            leastGrip: 0,
            greatestAngle: 180,
            radius: 'nominal',
          },
        ],
        nodes: [
          { id: 'a', name: 'a', at: { kind: 'point', point: 'p', offset: [0, 0, 0] } },
          {
            id: 'b',
            name: 'b',
            at: { kind: 'on', member: 'm', bend: 1, where: 'end', distance: 0, offset: [0, 0, 0] },
          },
          { id: 'c', name: 'C', at: { kind: 'on', member: 'm', from: 'end', distance: 5, offset: [0, 0, 0] } },
        ],
        members: [
          {
            id: 'm',
            name: 'm',
            role: '',
            path: ['a', "a'"],
            section: 's',
            mirror: false,
            ends: [
              { fit: 'auto', allowance: 0 },
              { fit: 'auto', allowance: 0 },
            ],
          },
          {
            id: 'n',
            name: 'n',
            role: '',
            path: ['b', 'c'],
            section: 's',
            mirror: false,
            ends: [
              { fit: 'cope', against: ['m'], allowance: 0 },
              { fit: 'square', allowance: 0 },
            ],
          },
        ],
        envelopes: [
          { id: 'e', name: 'e', kind: 'box', centre: [0, 0, 1000], size: [1, 2, 3], rotation: [0, 0, 0], gap: 0 },
        ],
        rules: [],
        stickSorts: [],
        spares: [],
        sawn: [],
        pulls: [],
        bent: [],
        made: [],
        feeds: [],
        feet: [],
        gussets: [],
        seen: [],
        holds: [],
        measurements: [],
        printed: [],
        scans: [],
        certificates: [],
        photos: [],
        variants: [],
      },
    });
  });

  it('may begin with a byte order mark and be empty of tubes', () => {
    expect(parseJob(`\uFEFF{ ${head} }`).ok).toBe(true);
  });

  it('has no negative zero', () => {
    const parsed = parseJob(`{ ${head}, "points": [{ "id": "p", "position": [-0, -0.0, 1] }] }`);
    expect(parsed.ok && parsed.job.points[0]!.position).toEqual([0, 0, 1]);
  });
});

describe('text that is no job', () => {
  it.each([
    ['', 'the file is empty'],
    [' \n', 'the file is empty'],
    ['\u0000\u0001', 'line 1, column 1: unexpected "\\u0000\\u0001"'],
    ['hello', 'line 1, column 1: unexpected "hello"'],
    ['{\n  "a": 1,\n}', 'line 3, column 1: a name in double quotes is missing'],
    ['{ "a": [1,] }', 'line 1, column 11: a value is missing'],
    ['{ "a": 1 // note\n}', 'line 1, column 10: comments are not part of JSON'],
    ['/* note */ {}', 'line 1, column 1: comments are not part of JSON'],
    ['{ "a": NaN }', 'line 1, column 8: unexpected "NaN"'],
    ['{ "a": -Infinity }', 'line 1, column 8: unexpected "-"'],
    ['{ "a" 1 }', 'line 1, column 7: a colon is missing'],
    ['{ "a": 1 "b": 2 }', 'line 1, column 10: a comma or a closing bracket is missing'],
    ['{ "a": "x', 'line 1, column 8: a closing quote is missing'],
    ['{ "a": "x\ny" }', 'line 1, column 8: a closing quote is missing'],
    ['{ "a": "\t" }', 'line 1, column 8: a line break or control character inside quotes'],
    ['{ "a": 1.}', 'line 1, column 8: not a number as JSON writes it'],
    ['{ "a": "\\x" }', 'line 1, column 8: not an escape as JSON writes it'],
    ['{} {}', 'line 1, column 4: something stands after the end'],
    ['{\r\n"a": [1, 2}', 'line 2, column 11: a comma or a closing bracket is missing'],
    ['[1, 2', 'line 1, column 6: a closing ] is missing'],
    ['{ "a": { "b": 1 }', 'line 1, column 18: a closing } is missing'],
    ['[]', 'not a job: the file holds no object'],
    ['null', 'not a job: the file holds no object'],
    ['42', 'not a job: the file holds no object'],
    ['{}', 'format: missing: a job file begins with "format": "cagewright/job"'],
    ['{ "format": "other", "version": 1 }', 'format: not "cagewright/job" but "other"'],
    ['{ "format": 3, "version": 1 }', 'format: not "cagewright/job"'],
    ['{ "format": "cagewright/job" }', 'version: missing'],
    ['{ "format": "cagewright/job", "version": "1" }', 'version: not a whole number from 1 up'],
    ['{ "format": "cagewright/job", "version": 0 }', 'version: not a whole number from 1 up'],
    [
      '{ "format": "cagewright/job", "version": 2, "points": 7 }',
      'version: 2 was made by a later version of the program, which reads up to 1',
    ],
  ])('%j', (text, line) => {
    expect(lines(text)).toEqual([line]);
  });

  it.each(['[', '{"a":', '[},', '{"a":[', '[[],', '{"a"],"b":{', '[{"a":1},', '{,"a":{'])(
    'nested 50 000 times with %s',
    (opening) => {
      expect(lines(opening.repeat(50_000))).toHaveLength(1);
      expect(lines(`{ ${head}, "later": ${opening.repeat(50_000)}`)).toHaveLength(1);
    },
  );

  it('says where nesting goes too deep', () => {
    const text = `${'['.repeat(50_000)}${']'.repeat(50_000)}`;
    expect(lines(text)).toEqual(['line 1, column 65: nested more than 64 deep']);
    expect(lines(`{ ${head}, "later": ${'['.repeat(60)}${']'.repeat(60)} }`)).toEqual([]);
  });
});

describe('names that every object has', () => {
  it.each(['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty'])('%s is refused anywhere', (key) => {
    expect(lines(`{ ${head}, "${key}": { "polluted": true } }`)).toHaveLength(1);
    const [line] = lines(`{ ${head}, "points": [{ "id": "p", "position": [0, 0, 0], "${key}": 1 }] }`);
    expect(line).toMatch(/^points\[0\].*: not allowed as a name$/u);
    expect(lines(`{ ${head}, "later": { "a": [{ "${key}": {} }] } }`)).toHaveLength(1);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  it('names the place', () => {
    expect(lines(`{ ${head}, "__proto__": {} }`)).toEqual(['["__proto__"]: not allowed as a name']);
    expect(lines(`{ ${head}, "members": [{ "constructor": 1 }] }`)[0]).toBe(
      'members[0].constructor: not allowed as a name',
    );
  });

  it('a key given twice is refused', () => {
    expect(lines(`{ ${head}, "points": [], "points": [] }`)).toEqual(['points: given twice']);
    expect(lines(`{ ${head}, "later": [{ "net": 1, "net": 2 }] }`)).toEqual(['later[0].net: given twice']);
  });
});

type Change = readonly [keys: readonly (string | number)[], value: unknown, line: string];

const SHAPE: readonly Change[] = [
  [['points'], {}, 'points: not a list'],
  [['points', 0], 7, 'points[0]: not an object'],
  [['points', 0, 'id'], undefined, 'points[0].id: missing'],
  [['envelopes', 0, 'id'], '', 'envelopes[0].id: empty'],
  [['points', 1, 'id'], 7, 'points[1].id: not text'],
  [['points', 1, 'name'], null, 'points[1].name: not text'],
  [['points', 0, 'position'], undefined, 'points[0].position: missing'],
  [['points', 0, 'position'], [1, 2], 'points[0].position[2]: missing'],
  [['points', 0, 'position'], [1, 2, 3, 4], 'points[0].position[3]: one too many'],
  [['points', 0, 'position', 1], '640', 'points[0].position[1]: not a number'],
  [['points', 0, 'position', 1], null, 'points[0].position[1]: not a number'],
  [['points', 0, 'position', 1], 100_001, 'points[0].position[1]: beyond 100 m'],
  [['points', 0, 'position', 1], -1e300, 'points[0].position[1]: beyond 100 m'],
  [['lengthUnit'], 'ft', 'lengthUnit: not "in" or "mm"'],
  [['name'], [], 'name: not text'],
  [['sections', 0, 'outerDiameter'], 0, 'sections[0].outerDiameter: below 0.01 mm'],
  [['sections', 0, 'wall'], 0, 'sections[0].wall: below 0.01 mm'],
  [['sections', 0, 'wall'], -3, 'sections[0].wall: below 0.01 mm'],
  [['dies', 0, 'centrelineRadius'], -1, 'dies[0].centrelineRadius: below 0.01 mm'],
  [['dies', 0, 'leastGrip'], -1, 'dies[0].leastGrip: below zero'],
  [['dies', 0, 'greatestAngle'], 181, 'dies[0].greatestAngle: beyond 180 degrees'],
  [['dies', 0, 'greatestAngle'], 0, 'dies[0].greatestAngle: below 0.01 degrees'],
  [['nodes', 0, 'at'], undefined, 'nodes[0].at: missing'],
  [
    ['nodes', 0, 'at', 'kind'],
    'floating',
    'nodes[0].at.kind: not "fixed" or "point" or "on" or "between" or "ray" or "lined-up" or "crossing"',
  ],
  [['nodes', 0, 'at', 'kind'], undefined, 'nodes[0].at.kind: missing'],
  [['nodes', 3, 'at', 'from'], 'middle', 'nodes[3].at.from: not "start" or "end"'],
  [['nodes', 4, 'at', 'bend'], undefined, 'nodes[4].at.bend: missing, and there is no "from" or "until" either'],
  [['nodes', 3, 'at', 'bend'], 1, 'nodes[3].at.bend: not beside "from"'],
  [['nodes', 3, 'at', 'distance'], undefined, 'nodes[3].at.distance: missing'],
  [['nodes', 4, 'at', 'bend'], 0, 'nodes[4].at.bend: bends count from 1'],
  [['nodes', 4, 'at', 'bend'], 1.5, 'nodes[4].at.bend: not a whole number'],
  [['nodes', 4, 'at', 'where'], 'top', 'nodes[4].at.where: not "start" or "middle" or "end"'],
  [['nodes', 4, 'at', 'where'], undefined, 'nodes[4].at.where: missing'],
  [['nodes', 5, 'at', 'fraction'], 1001, 'nodes[5].at.fraction: beyond 1000'],
  [['nodes', 5, 'at', 'nodes'], ['foot'], 'nodes[5].at.nodes[1]: missing'],
  [['nodes', 7, 'at', 'until', 'axis'], 'w', 'nodes[7].at.until.axis: not "x" or "y" or "z"'],
  [['nodes', 7, 'at', 'until'], undefined, 'nodes[7].at.until: missing'],
  [['nodes', 3, 'at', 'nth'], 1, 'nodes[3].at.nth: not beside "from"'],
  [['nodes', 3, 'at', 'until'], { axis: 'z', value: 1 }, 'nodes[3].at.until: not beside "from"'],
  [['nodes', 4, 'at', 'nth'], 1, 'nodes[4].at.nth: not beside "bend"'],
  [['nodes', 9, 'at', 'distance'], 5, 'nodes[9].at.distance: not beside "until"'],
  [['nodes', 9, 'at', 'bend'], 1, 'nodes[9].at.bend: not beside "until"'],
  [['nodes', 9, 'at', 'nth'], 0, 'nodes[9].at.nth: counts from 1'],
  [['nodes', 9, 'at', 'nth'], 1.5, 'nodes[9].at.nth: not a whole number'],
  [['nodes', 9, 'at', 'nth'], 1e300, 'nodes[9].at.nth: beyond 100000'],
  [['nodes', 9, 'at', 'until', 'axis'], 'w', 'nodes[9].at.until.axis: not "x" or "y" or "z"'],
  [['nodes', 9, 'at', 'until'], 900, 'nodes[9].at.until: not an object'],
  [['nodes', 9, 'at', 'until', 'plus'], 1e9, 'nodes[9].at.until.plus: beyond 100 m'],
  [['nodes', 9, 'at', 'until'], { axis: 'z', value: 1, node: 'mid' }, 'nodes[9].at.until.node: not beside "value"'],
  [['nodes', 10, 'at', 'x'], {}, 'nodes[10].at.x.point: missing, and there is no "value" or "node" either'],
  [['nodes', 10, 'at', 'x'], 12, 'nodes[10].at.x: not an object'],
  [['nodes', 10, 'at', 'x', 'value'], 1e300, 'nodes[10].at.x.value: beyond 100 m'],
  [['nodes', 10, 'at', 'x', 'plus'], 1, 'nodes[10].at.x.plus: not beside "value"'],
  [['nodes', 10, 'at', 'y', 'node'], 'mid', 'nodes[10].at.y.point: not beside "node"'],
  [['nodes', 10, 'at', 'z'], undefined, 'nodes[10].at.z: missing'],
  [['nodes', 8, 'at', 'clear', 'gap'], -1, 'nodes[8].at.clear.gap: below zero'],
  [['nodes', 8, 'at', 'clear', 'direction'], undefined, 'nodes[8].at.clear.direction: missing'],
  [['nodes', 11, 'at', 'line'], ['mid'], 'nodes[11].at.line[1]: missing'],
  [['nodes', 11, 'at', 'member'], undefined, 'nodes[11].at.member: missing'],
  [['members', 0, 'path'], ['foot'], 'members[0].path: fewer than two nodes'],
  [['members', 0, 'section'], undefined, 'members[0].section: missing'],
  [['members', 0, 'mirror'], 'yes', 'members[0].mirror: not true or false'],
  [['members', 0, 'ends'], [{ fit: 'auto' }], 'members[0].ends[1]: missing'],
  [
    ['members', 0, 'ends', 1, 'fit'],
    'weld',
    'members[0].ends[1].fit: not "auto" or "square" or "cope" or "plate" or "foot" or "mitre"',
  ],
  [['members', 1, 'ends', 0, 'against'], [], 'members[1].ends[0].against: names no member'],
  [['members', 1, 'ends', 0, 'against'], undefined, 'members[1].ends[0].against: missing'],
  [['envelopes', 0, 'size', 2], 0, 'envelopes[0].size[2]: below 0.01 mm'],
  [['envelopes', 0, 'kind'], 'ball', 'envelopes[0].kind: not "box" or "driver"'],
  [['envelopes', 0, 'gap'], -1, 'envelopes[0].gap: below zero'],
  [['envelopes', 0, 'rotation', 0], 1000, 'envelopes[0].rotation[0]: more than a full turn'],
  [['rules', 0, 'sheet'], 7, 'rules[0].sheet: not text'],
  [['rules', 0, 'checks', 2, 'most'], 'steep', 'rules[0].checks[2].most: not a number'],
  [['rules', 0, 'checks', 2, 'of'], 'weather', 'rules[0].checks[2].of: not "axis" or "plane" or "joint"'],
  [
    ['rules', 0, 'checks', 2, 'mark'],
    'certain',
    'rules[0].checks[2].mark: not "read" or "quoted" or "memory" or "own"',
  ],
  [['rules', 0, 'checks', 5, 'answer', 'says'], 'legal', 'rules[0].checks[5].answer.says: not "met" or "not-met"'],
  [['rules', 0, 'checks', 5, 'text'], 'x'.repeat(2001), 'rules[0].checks[5].text: longer than 2000 characters'],
  [['carMass'], -1, 'carMass: below zero'],
  [['stock', 'kerf'], -1, 'stock.kerf: below zero'],
  [['stock', 'sticks', 0, 'length'], 0, 'stock.sticks[0].length: below 0.01 mm'],
  [['stock', 'sticks', 0, 'cost'], -5, 'stock.sticks[0].cost: below zero'],
  [['stock', 'keepFrom'], -1, 'stock.keepFrom: below zero'],
  [['stock', 'sawn', 0, 'cuts', 1, 'length'], 0, 'stock.sawn[0].cuts[1].length: below 0.01 mm'],
  [['stock', 'sawn', 0, 'left'], -0.001, 'stock.sawn[0].left: below zero'],
  [['stock', 'sawn', 0, 'section'], 'gone', 'stock.sawn[0].section: no section "gone"'],
  [['quote', 'rates', 'hourly'], -1, 'quote.rates.hourly: below zero'],
  [['quote', 'rates', 'minutes', 'cope'], -14, 'quote.rates.minutes.cope: below zero'],
  [['quote', 'rates', 'minutes', 'cope'], 10001, 'quote.rates.minutes.cope: beyond 10000 minutes'],
  [['quote', 'rates', 'prices', 'boltEach'], -0.01, 'quote.rates.prices.boltEach: below zero'],
  [['quote', 'rates', 'margin'], -1, 'quote.rates.margin: below zero'],
  [['quote', 'rates', 'overhead'], 1001, 'quote.rates.overhead: beyond 1000 percent'],
  [['quote', 'rates', 'currency'], 'a whole sentence', 'quote.rates.currency: longer than 12 characters'],
  [['quote', 'extras', 0, 'amount'], -5, 'quote.extras[0].amount: below zero'],
  [['quote', 'took', 0, 'hours'], -2, 'quote.took[0].hours: below zero'],
  [['stock', 'spares', 0, 'count'], 1.5, 'stock.spares[0].count: not a whole number'],
  [['bodyLines', 0, 'points'], ['post'], 'bodyLines[0].points: fewer than two points'],
  // The least and the most of every kind of number
  [['sections', 0, 'outerDiameter'], 1001, 'sections[0].outerDiameter: beyond 1000 mm'],
  [['sections', 0, 'wall'], 1e-15, 'sections[0].wall: below 0.01 mm'],
  [['sections', 0, 'stick'], 0.009, 'sections[0].stick: below 0.01 mm'],
  [['dies', 0, 'outerDiameter'], 5e-324, 'dies[0].outerDiameter: below 0.01 mm'],
  [['dies', 0, 'centrelineRadius'], 1e300, 'dies[0].centrelineRadius: beyond 100 m'],
  [['dies', 0, 'greatestAngle'], 1e-200, 'dies[0].greatestAngle: below 0.01 degrees'],
  [['dies', 0, 'bender', 'levelStep'], 1e-4, 'dies[0].bender.levelStep: below 0.001 degrees'],
  [['dies', 0, 'bender', 'pullStep'], 46, 'dies[0].bender.pullStep: beyond 45 degrees'],
  [['dies', 0, 'bender', 'planeHeight'], -1, 'dies[0].bender.planeHeight: below zero'],
  [['dies', 0, 'bender', 'room', 0, 'size', 1], 1e-200, 'dies[0].bender.room[0].size[1]: below 0.01 mm'],
  [['envelopes', 0, 'size', 0], 1e-200, 'envelopes[0].size[0]: below 0.01 mm'],
  [['pulls', 0, 'net'], 1e-300, 'pulls[0].net: below 0.01 degrees'],
  [['pulls', 0, 'pulled'], 201, 'pulls[0].pulled: beyond 200 degrees'],
  [['pulls', 0, 'bend'], 1e9, 'pulls[0].bend: beyond 100000'],
  [['bent', 0, 'drawn', 'legs', 1], -1, 'bent[0].drawn.legs[1]: below zero'],
  [['nodes', 5, 'at', 'fraction'], -1e300, 'nodes[5].at.fraction: beyond 1000'],
];

const MEANING: readonly Change[] = [
  [['rules', 0, 'checks', 2, 'least'], 70, 'rules[0].checks[2].least: above the most'],
  [['rules', 0, 'checks', 0, 'massFrom'], 1200, 'rules[0].checks[0].massFrom: not below massUpTo'],
  [
    ['rules', 0, 'checks', 0, 'least'],
    60,
    'rules[0].checks[0].least: a section is asked for by sizes, wall, area and the like',
  ],
  [['rules', 1], { sheet: 'own' }, 'rules[1].sheet: "own" is there already'],
  [['envelopes', 0, 'id'], "head'", `envelopes[0].id: ends in a prime ('), which stands for the mirror image`],
  [['envelopes', 0, 'id'], 'x'.repeat(201), 'envelopes[0].id: longer than 200 characters'],
  [['envelopes', 0, 'id'], 'he\nad', 'envelopes[0].id: holds a control character or a line break'],
  [['envelopes', 0, 'id'], '\u2028', 'envelopes[0].id: holds a control character or a line break'],
  [['envelopes', 0, 'id'], 'a\ud800', 'envelopes[0].id: holds a control character or a line break'],
  [['nodes', 5, 'id'], 'foot', 'nodes[5].id: "foot" is already nodes[0]'],
  [['sections', 0, 'wall'], 22.225, "sections[0].wall: 22.225 is not less than the tube's radius, 22.225"],
  [['sections', 0, 'wall'], 30.000000000000004, "sections[0].wall: 30 is not less than the tube's radius, 22.225"],
  [['bodyLines', 0, 'points', 1], 'gone', 'bodyLines[0].points[1]: no point "gone"'],
  [['nodes', 2, 'at', 'point'], "gone'", `nodes[2].at.point: no point "gone'"`],
  [['nodes', 3, 'at', 'member'], 'gone', 'nodes[3].at.member: no member "gone"'],
  [['nodes', 3, 'at', 'member'], "hoop'", `nodes[3].at.member: no member "hoop'": "hoop" is not mirrored`],
  [['nodes', 5, 'at', 'nodes', 1], 'gone', 'nodes[5].at.nodes[1]: no node "gone"'],
  [['nodes', 7, 'at', 'from'], "top''", `nodes[7].at.from: no node "top''"`],
  [['nodes', 7, 'at', 'direction'], [0, 0, 0], 'nodes[7].at.direction: has no length, so no direction'],
  [['nodes', 7, 'at', 'direction'], [1e-200, 0, 0], 'nodes[7].at.direction: has no length, so no direction'],
  [['nodes', 8, 'at', 'clear', 'direction'], [0, 0, 0], 'nodes[8].at.clear.direction: has no length, so no direction'],
  [['nodes', 9, 'at', 'until', 'node'], "gone'", `nodes[9].at.until.node: no node "gone'"`],
  [['nodes', 9, 'at', 'member'], "hoop'", `nodes[9].at.member: no member "hoop'": "hoop" is not mirrored`],
  [['nodes', 10, 'at', 'y', 'point'], 'gone', 'nodes[10].at.y.point: no point "gone"'],
  [['nodes', 10, 'at', 'z', 'node'], 'gone', 'nodes[10].at.z.node: no node "gone"'],
  [['nodes', 11, 'at', 'line', 1], 'gone', 'nodes[11].at.line[1]: no node "gone"'],
  [['nodes', 11, 'at', 'member'], "hoop'", `nodes[11].at.member: no member "hoop'": "hoop" is not mirrored`],
  [['members', 0, 'path', 1], 'a-fot', 'members[0].path[1]: no node "a-fot"'],
  [['members', 0, 'section'], 'gone', 'members[0].section: no section "gone"'],
  [['members', 0, 'section'], "main'", `members[0].section: no section "main'"`],
  [['members', 0, 'die'], 'gone', 'members[0].die: no die "gone"'],
  [['members', 0, 'ends', 0, 'normal'], [0, 0, 0], 'members[0].ends[0].normal: has no length, so no direction'],
  [['members', 1, 'ends', 0, 'against', 0], 'stay', 'members[1].ends[0].against[0]: "stay" is the member itself'],
  [['members', 1, 'ends', 0, 'against', 0], 'gone', 'members[1].ends[0].against[0]: no member "gone"'],
];

it('an end coped to more tubes than there is room for is refused', () => {
  const against = Array.from({ length: 51 }, () => 'hoop');
  expect(lines(JSON.stringify(withValue(sampleFile(), ['members', 1, 'ends', 0, 'against'], against)))).toEqual([
    'members[1].ends[0].against: more than 50',
  ]);
});

describe('one thing wrong', () => {
  it.each([...SHAPE, ...MEANING])('%j set to %j', (keys, value, line) => {
    expect(lines(JSON.stringify(withValue(sampleFile(), keys, value)))).toEqual([line]);
  });

  it('a number too large for any computer is named where it stands', () => {
    const text = (position: string) =>
      `{ ${head}, "nodes": [{ "id": "a", "at": { "kind": "fixed", "position": ${position} } }] }`;
    expect(lines(text('[0, 1e999, 0]'))).toEqual(['nodes[0].at.position[1]: not a finite number']);
    expect(lines(text('[0, -1e999, 0]'))).toEqual(['nodes[0].at.position[1]: not a finite number']);
    expect(lines(`{ ${head}, "later": [{ "net": 1e999 }] }`)).toEqual(['later[0].net: not a finite number']);
  });
});

describe('several things wrong', () => {
  it('are all named', () => {
    const file = withValue(withValue(sampleFile(), ['members', 0, 'path', 1], 'no'), ['sections', 0, 'wall'], 30);
    expect(lines(JSON.stringify(file))).toEqual([
      "sections[0].wall: 30 is not less than the tube's radius, 22.225",
      'members[0].path[1]: no node "no"',
    ]);
  });

  it('up to fifty, and a count of the rest', () => {
    const path = Array.from({ length: 73 }, (_, i) => `n${i}`);
    const said = lines(JSON.stringify(withValue(sampleFile(), ['members', 0, 'path'], path)));
    expect(said).toHaveLength(51);
    expect(said[50]).toBe('and 23 more');
  });

  it("keep to one line each, whatever the file's words", () => {
    const word = 'a\nb\r\u2028c\u001b[31m\u202e\u0085';
    const [line] = lines(JSON.stringify(withValue(sampleFile(), ['members', 0, 'path', 1], word)));
    expect(line).toBe(String.raw`members[0].path[1]: no node "a\nb\r\u2028c\u001b[31m\u202e\u0085"`);
    const [long] = lines(JSON.stringify(withValue(sampleFile(), ['members', 0, 'path', 1], '𝄞'.repeat(5000))));
    expect(long).toBe(`members[0].path[1]: no node "${'𝄞'.repeat(39)}…"`);
    const [key] = lines(`{ ${head}, "later": { "a\\nb": { "toString": 1 } } }`);
    expect(key).toBe(String.raw`later["a\nb"].toString: not allowed as a name`);
  });
});

describe('any text at all', () => {
  const text = JSON.stringify(sampleFile(), null, 1);
  const scraps = fc.constantFrom(
    ...'{ } [ ] , : " \\ \' null true - 1e999 0 // /* "__proto__": "id":"foot" [[[[[[[['.split(' '),
    '',
    '\n',
    '\u0000',
    '\ud800',
  );

  it('gives a job or faults of one line, and never throws', () => {
    const edit = fc.record({ at: fc.nat(text.length), cut: fc.nat(30), put: scraps });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
        const broken = edits.reduce((old, { at, cut, put }) => old.slice(0, at) + put + old.slice(at + cut), text);
        const parsed = parseJob(broken);
        const said = parsed.ok ? ['fine'] : parsed.faults.map(faultLine);
        expect(said.length).toBeGreaterThan(0);
        for (const line of said) expect(line).toMatch(/^[^\p{Cc}\p{Zl}\p{Zp}]{1,500}$/u);
      }),
      { seed: 21, numRuns: drawn(120, 3000) },
    );
  });

  it('holds as well for well-formed JSON with the wrong things in it', () => {
    const keys: (string | number)[][] = [];
    const walk = (value: unknown, path: (string | number)[]): void => {
      if (path.length > 0) keys.push(path);
      if (Array.isArray(value)) value.forEach((item, index) => walk(item, [...path, index]));
      else if (typeof value === 'object' && value !== null) {
        for (const [key, item] of Object.entries(value)) walk(item, [...path, key]);
      }
    };
    walk(sampleFile(), []);
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.jsonValue(), (path, value) => {
        const parsed = parseJob(JSON.stringify(withValue(sampleFile(), path, value)));
        expect(parsed.ok ? 1 : parsed.faults.length).toBeGreaterThan(0);
      }),
      { seed: 22, numRuns: drawn(120, 3000) },
    );
  });
});
