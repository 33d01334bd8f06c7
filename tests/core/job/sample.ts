import { outOfBlocks } from '../../../src/core/job/in-blocks.ts';
import type { Job } from '../../../src/core/job/types.ts';

/** A small job that has one of everything, as plain data: tests change a piece of it. Made up; nobody's car. */
export const sampleFile = () => ({
  format: 'cagewright/job',
  version: 1,
  name: 'Bench frame',
  lengthUnit: 'in',
  accuracy: { point: 1.5, cut: 0.8, angle: 0.4, rotation: 0.6, mark: 1.2 },
  tools: {
    benchSaw: 45,
    notchers: [{ name: 'Bench notcher', greatestOffSquare: 50, takesOffset: true, step: 0.5, leans: 'over-tube' }],
    saws: [{ diameter: 44.45, reach: 41 }],
  },
  points: [
    { id: 'sill-l', name: 'Sill top, left', position: [0, 640, 310], by: 'tape' },
    { id: 'post', name: 'Post', accuracy: 3, position: [-40, 600, 900], from: { scan: 'scan1' } },
    { id: 'tower', name: 'Tower', position: [-870, 450, 700], by: 'survey', standIn: true, trim: 12 },
  ],
  bodyLines: [{ id: 'door', name: 'Door opening', points: ['sill-l', 'post', "post'"] }],
  sections: [{ id: 'main', name: '1 3/4 x .120', outerDiameter: 44.45, wall: 3.048, material: 'dom-1020' }],
  dies: [
    {
      id: 'd1',
      name: '6 in CLR',
      outerDiameter: 44.45,
      centrelineRadius: 152.4,
      clampOffset: 114.3,
      leastStraight: 60,
      leastGrip: 150,
      greatestAngle: 120,
      radius: 'nominal',
      bender: {
        turns: 'left',
        bendLies: 'beyond',
        planeHeight: 940,
        rotationBy: 'level',
        levelStep: 0.1,
        wheelStep: 1,
        pullStep: 0.5,
        room: [
          { name: 'Bench', kind: 'box', centre: [-900, 1200, 425], size: [1800, 600, 850], rotation: [0, 0, 0] },
          { name: 'Wall', kind: 'plane', point: [0, -1500, 0], normal: [0, 1, 0] },
        ],
      },
    },
  ],
  nodes: [
    { id: 'foot', name: 'foot', at: { kind: 'fixed', position: [0, 620, 0] } },
    { id: 'top', name: 'top', at: { kind: 'fixed', position: [0, 500, 1100] } },
    { id: 'sill', name: 'sill', at: { kind: 'point', point: 'sill-l', offset: [0, -32, 0] } },
    {
      id: 'stay-top',
      name: 'stay-top',
      at: { kind: 'on', member: 'hoop', from: 'start', distance: 900, offset: [0, 0, 0] },
    },
    {
      id: 'on-bend',
      name: 'on-bend',
      at: { kind: 'on', member: 'hoop', bend: 1, where: 'middle', distance: 0, offset: [0, 0, 0] },
    },
    { id: 'mid', name: 'mid', at: { kind: 'between', nodes: ['foot', "foot'"], fraction: 0.5 } },
    { id: 'tower', name: 'tower', at: { kind: 'fixed', position: [-900, 450, 300] } },
    {
      id: 'leg',
      name: 'leg',
      at: { kind: 'ray', from: 'top', direction: [0, 0.4226, -0.9063], until: { axis: 'y', value: 640 } },
    },
    {
      id: 'off-post',
      name: 'off-post',
      at: { kind: 'point', point: 'post', offset: [0, 0, 0], clear: { direction: [0, -1, 0], gap: 31.75 } },
    },
    {
      id: 'level',
      name: 'level',
      at: {
        kind: 'on',
        member: 'hoop',
        until: { axis: 'z', node: "tower'", plus: 400 },
        nth: 1,
        offset: [0, 0, 0],
      },
    },
    {
      id: 'in-line',
      name: 'in-line',
      at: { kind: 'lined-up', x: { value: 300 }, y: { point: "post'", plus: 10 }, z: { node: "tower'", plus: 0 } },
    },
    { id: 'across', name: 'across', at: { kind: 'crossing', member: 'hoop', line: ['level', "off-post'"] } },
  ],
  members: [
    {
      id: 'hoop',
      name: 'Main hoop',
      role: 'main-hoop',
      path: ['foot', 'top', "top'", "foot'"],
      section: 'main',
      die: 'd1',
      mirror: false,
      ends: [
        { fit: 'plate', normal: [0, 0, 1], allowance: 0 },
        { fit: 'foot', foot: 'pad', normal: [0, 0.1, 1], allowance: 3 },
      ],
    },
    {
      id: 'stay',
      name: 'Rear stay',
      role: 'rear-stay',
      path: ['stay-top', 'tower'],
      section: 'main',
      mirror: true,
      ends: [
        { fit: 'cope', against: ['hoop', "stay'"], allowance: 0 },
        { fit: 'square', allowance: 0 },
      ],
    },
  ],
  feet: [
    {
      id: 'pad',
      name: 'Sill box',
      kind: 'box',
      size: [120, 100],
      thickness: 3,
      height: 40,
      wall: 2,
      holes: [{ at: [40, -30], diameter: 10.5 }],
    },
  ],
  gussets: [
    {
      id: 'g1',
      name: 'Hoop to stay',
      kind: 'bent',
      node: 'stay-top',
      between: [
        { member: 'hoop', towards: 'A', leg: 100 },
        { member: 'stay', towards: 'B', leg: 90 },
      ],
      thickness: 3,
      relief: 5,
      width: 38,
      radius: 4,
      kFactor: 0.4,
      mirror: true,
    },
    {
      id: 'g2',
      name: 'In the bend',
      kind: 'flat',
      node: 'top',
      between: [
        { member: 'hoop', towards: 'A', leg: 200 },
        { member: 'hoop', towards: 'B', leg: 200 },
      ],
      thickness: 3,
      relief: 0,
      mirror: false,
    },
  ],
  seen: [{ finding: 'joint/in-bend', tube: 'stay', end: 'A', bend: 1, as: '{"runTube":"hoop"}' }],
  envelopes: [
    {
      id: 'head',
      name: 'Helmet',
      kind: 'box',
      centre: [-150, 330, 1010],
      size: [330, 280, 330],
      rotation: [0, 10, 0],
      gap: 50,
    },
    {
      id: 'driver',
      name: 'Driver',
      kind: 'driver',
      helmetTop: "tower'",
      eye: 'post',
      shoulders: ['sill-l', "post'"],
      helmet: [340, 250, 265],
      motion: { forward: 60, back: 5, side: 40, up: 15 },
      gap: 50.8,
    },
  ],
  survey: {
    askew: false,
    hold: [{ point: 'tower', and: 'post', axis: 'z', value: 700 }],
    measurements: [
      { id: 'r1', kind: 'width', point: 'tower', value: 900, sigma: 1 },
      { id: 'r2', kind: 'distance', from: 'sill-l', to: 'tower', value: 1010.4, instrument: 'Steel tape' },
      { id: 'r3', kind: 'difference', from: "tower'", to: 'post', axis: 'z', value: 212 },
      { id: 'r4', kind: 'inclination', from: 'sill-l', to: 'post', value: 61.4, excluded: true },
      { id: 'r5', kind: 'coordinate', point: 'tower', axis: 'x', value: -870 },
    ],
    samples: [
      {
        name: 'At the hoop',
        radius: 152.4,
        outerDiameter: 44.45,
        angle: 60,
        air: 12,
        rail: 25,
        gaps: [{ leg: 'roof', along: 50, gap: 14 }],
      },
    ],
  },
  later: { kerf: 2.5, racks: [{ section: 'main', length: 6096 }] },
  stock: {
    kerf: 2.5,
    squareOff: 10,
    keepFrom: 250,
    sticks: [{ id: 'k1', section: 'main', length: 6096, count: 2, cost: 88.5, batch: 'H-204', rack: true }],
    spares: [{ section: 'main', length: 400, count: 2, batch: 'H-204' }],
    sawn: [
      {
        id: 'w1',
        section: 'main',
        length: 6096,
        batch: 'H-204',
        cost: 88.5,
        cuts: [
          { tube: 'hoop', length: 3021.4 },
          { batch: 'H-204', length: 400 },
        ],
        left: 2659.6,
        from: 'k9',
        kept: 'k1',
        bought: true,
        rack: true,
        on: '2026-03-02',
      },
    ],
  },
  quote: {
    rates: {
      currency: 'EUR',
      hourly: 58,
      minutes: { straightCut: 3, cope: 14, bending: 9, weldMetre: 25 },
      prices: { footKilogram: 4.2, boltEach: 0.9, sawEach: 22 },
      overhead: 12,
      margin: 15,
      tax: { name: 'VAT', percent: 20 },
    },
    heading: 'Made in the bench shop',
    customer: 'A customer',
    number: '2026-014',
    validUntil: '2026-04-30',
    terms: 'Good for thirty days',
    extras: [{ what: 'Paint', amount: 120 }],
    took: [{ line: 'bending', hours: 2.5, paid: 3, on: '2026-03-02', remark: 'one tube twice' }],
  },
  pulls: [{ die: 'd1', section: 'main', batch: 'H-204', pulled: 63.2, net: 60, on: '2026-03-02' }],
  bent: [
    {
      tube: 'hoop',
      order: [
        { bend: 1, front: 'A' },
        { bend: 2, front: 'A' },
      ],
      stands: false,
      seat: [
        { at: 'A', point: 'sill-l' },
        { at: 'middle', x: 12, z: 1010.5 },
      ],
      done: ['cut', 'mark', 'clamp 1'],
      bends: [{ bend: 1, pulled: 88, net: 84.5, rotation: 0, straight: 1003.5, across: [43.1, 45.6] }],
      checks: [{ check: 'chord', measured: 1240 }],
      drawn: { legs: [1106.5, 1000, 1106.5], angles: [83.8, 83.8], rotations: [0, 0], starts: [990, 1800] },
    },
  ],
  made: [
    {
      tube: 'stay',
      stage: 'cut',
      held: {
        corners: [
          [0, 500, 900],
          [-900, 540, 400],
        ],
        radii: [],
        outerDiameter: 44.45,
        wall: 3.048,
        ends: [
          {
            fit: 'cope',
            allowance: 0,
            cutters: [
              {
                against: 'hoop',
                mirrored: false,
                corners: [
                  [0, 620, 0],
                  [0, 480, 1000],
                  [0, -480, 1000],
                ],
                radii: [152.4],
                outerDiameter: 44.45,
              },
            ],
          },
          { fit: 'plate', allowance: 3, cutters: [], normal: [0, 0.2, 1], rise: 0 },
        ],
      },
    },
  ],
  carMass: 940,
  rules: [
    {
      sheet: 'own',
      body: 'Valley Hill Climb',
      edition: '2026',
      on: '2026-03-02',
      notAsked: ['roof'],
      checks: [
        {
          article: '4.1',
          kind: 'section',
          of: 'size',
          roles: ['main-hoop'],
          sizes: [{ outerDiameter: 45, wall: 2.5 }],
          allowance: 0.2,
          massFrom: 700,
          massUpTo: 1200,
          mark: 'own',
          text: 'Hoop 45 x 2.5',
          question: 'tube-light',
        },
        {
          article: '4.2',
          kind: 'section',
          of: 'size',
          roles: [],
          only: 'bent',
          outerDiameter: 25,
          wall: 2,
          area: 173,
          secondMoment: 11320,
          mark: 'read',
          text: '',
        },
        {
          article: '5',
          kind: 'tilt',
          of: 'joint',
          roles: ['rear-stay'],
          onto: ['main-hoop'],
          end: 'upper',
          from: 'level',
          runs: 'rearward',
          least: 30,
          most: 60,
          mark: 'memory',
          text: '',
        },
        { article: '6', kind: 'support', of: 'lean', roles: [], within: 45, most: 30, mark: 'quoted', text: '' },
        {
          article: '7',
          kind: 'head-room',
          of: 'circle',
          roles: [],
          least: 50,
          aim: 80,
          diameter: 300,
          mark: 'own',
          text: '',
        },
        {
          article: '8',
          kind: 'ask',
          of: 'answer',
          roles: [],
          mark: 'own',
          text: 'Welds looked at?',
          answer: { says: 'met', by: 'the inspector', note: 'at the weigh bridge', on: '2026-04-01' },
        },
        {
          article: '4.3',
          kind: 'plate',
          of: 'area',
          roles: ['main-hoop'],
          box: 'covers',
          least: 6000,
          mark: 'own',
          text: '',
        },
      ],
    },
  ],
  printed: [{ tube: 'hoop', revision: '7K2F', cutLength: 3104.2, on: '2026-03-02' }],
  scans: [
    {
      id: 'scan1',
      name: 'Inside',
      kind: 'points',
      accuracy: 3,
      file: 'inside.ply',
      data: '1a2b3c',
      unit: 'm',
      up: 'y',
      placement: { rotation: [0, 0, 90], shift: [-200, 12.5, 300] },
      pairs: [{ at: [0.41, 0.2, -0.1], point: "sill-l'" }],
      count: 250_000,
      every: 4,
      shown: true,
    },
  ],
  certificates: [
    { section: 'main', batch: 'H-204', certificate: 'Inspection certificate 88-1', note: 'In the folder' },
  ],
  photos: [
    {
      id: 'photo1',
      name: 'Hoop on its boxes',
      sum: '0a1b2c3d4e5f60718293a4b5',
      on: '2026-03-04',
      tubes: ['hoop', "stay'"],
    },
  ],
  variants: [{ id: 'variant1', name: 'With one diagonal', on: '2026-03-01', text: '{ "format": "cagewright/job" }' }],
  marking: { from: 'B', mark: 'clamp', fine: true },
  feeds: [
    {
      tube: 'hoop',
      from: 'middle',
      order: [
        { bend: 2, front: 'B' },
        { bend: 1, front: 'A' },
      ],
    },
    { tube: "stay'", from: 'A' },
  ],
});

/** The value at a path of keys set, or taken away with undefined. */
export function withValue(file: object, keys: readonly (string | number)[], value: unknown): object {
  const copy = structuredClone(file);
  let at = copy as Record<string | number, unknown>;
  for (const key of keys.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
  const last = keys.at(-1)!;
  if (value === undefined) delete at[last];
  else at[last] = value;
  return copy;
}

/** The same as the program holds it. */
export const sampleJob = (): Job => outOfBlocks(sampleFile()) as Job;
