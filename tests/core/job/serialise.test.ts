import { describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { sampleFile, sampleJob } from './sample.ts';

const sample = () => sampleJob();

describe('serialiseJob', () => {
  it('comes back as an equal job', () => {
    const parsed = parseJob(serialiseJob(sample()));
    expect(parsed).toEqual({ ok: true, job: sample() });
  });

  it('is JSON as any reader takes it', () => {
    expect(JSON.parse(serialiseJob(sample()))).toEqual(sampleFile());
  });

  it('gives the same bytes whatever the order in which keys were set', () => {
    const backwards = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(backwards);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .toReversed()
          .map(([key, item]) => [key, backwards(item)]),
      );
    };
    expect(serialiseJob(backwards(sample()) as Job)).toBe(serialiseJob(sample()));
  });

  it('puts a record on a line where it fits', () => {
    const text = serialiseJob({
      ...sample(),
      dies: [],
      bodyLines: [],
      nodes: sample().nodes.slice(0, 1),
      members: [],
      feet: [],
      gussets: [],
      seen: [],
      rules: [],
      stickSorts: [],
      spares: [],
      sawn: [],
      printed: [],
      scans: [],
      certificates: [],
      photos: [],
      variants: [],
      bent: [],
      made: [],
      feeds: [{ tube: "stay'", from: 'A' }],
    });
    expect(text).toBe(`{
  "format": "cagewright/job",
  "version": 1,
  "name": "Bench frame",
  "lengthUnit": "in",
  "marking": { "from": "B", "mark": "clamp", "fine": true },
  "carMass": 940,
  "accuracy": { "point": 1.5, "cut": 0.8, "angle": 0.4, "rotation": 0.6, "mark": 1.2 },
  "tools": {
    "benchSaw": 45,
    "notchers": [{ "name": "Bench notcher", "greatestOffSquare": 50, "takesOffset": true, "step": 0.5, "leans": "over-tube" }],
    "saws": [{ "diameter": 44.45, "reach": 41 }]
  },
  "points": [
    { "id": "sill-l", "name": "Sill top, left", "position": [0, 640, 310], "by": "tape" },
    { "id": "post", "name": "Post", "accuracy": 3, "position": [-40, 600, 900], "from": { "scan": "scan1" } },
    { "id": "tower", "name": "Tower", "position": [-870, 450, 700], "by": "survey", "standIn": true, "trim": 12 }
  ],
  "survey": {
    "askew": false,
    "hold": [{ "point": "tower", "and": "post", "axis": "z", "value": 700 }],
    "measurements": [
      { "id": "r1", "kind": "width", "point": "tower", "value": 900, "sigma": 1 },
      { "id": "r2", "kind": "distance", "from": "sill-l", "to": "tower", "value": 1010.4, "instrument": "Steel tape" },
      { "id": "r3", "kind": "difference", "from": "tower'", "to": "post", "axis": "z", "value": 212 },
      { "id": "r4", "kind": "inclination", "from": "sill-l", "to": "post", "value": 61.4, "excluded": true },
      { "id": "r5", "kind": "coordinate", "point": "tower", "axis": "x", "value": -870 }
    ],
    "samples": [
      {
        "name": "At the hoop",
        "outerDiameter": 44.45,
        "angle": 60,
        "radius": 152.4,
        "air": 12,
        "rail": 25,
        "gaps": [{ "leg": "roof", "along": 50, "gap": 14 }]
      }
    ]
  },
  "bodyLines": [],
  "sections": [
    { "id": "main", "name": "1 3/4 x .120", "outerDiameter": 44.45, "wall": 3.048, "material": "dom-1020" }
  ],
  "dies": [],
  "nodes": [
    { "id": "foot", "name": "foot", "at": { "kind": "fixed", "position": [0, 620, 0] } }
  ],
  "members": [],
  "feet": [],
  "gussets": [],
  "envelopes": [
    {
      "id": "head",
      "name": "Helmet",
      "kind": "box",
      "centre": [-150, 330, 1010],
      "size": [330, 280, 330],
      "rotation": [0, 10, 0],
      "gap": 50
    },
    {
      "id": "driver",
      "name": "Driver",
      "kind": "driver",
      "helmetTop": "tower'",
      "eye": "post",
      "shoulders": ["sill-l", "post'"],
      "helmet": [340, 250, 265],
      "motion": { "forward": 60, "back": 5, "side": 40, "up": 15 },
      "gap": 50.8
    }
  ],
  "rules": [],
  "stock": { "kerf": 2.5, "squareOff": 10, "keepFrom": 250 },
  "quote": {
    "rates": {
      "currency": "EUR",
      "hourly": 58,
      "minutes": { "straightCut": 3, "cope": 14, "bending": 9, "weldMetre": 25 },
      "prices": { "footKilogram": 4.2, "boltEach": 0.9, "sawEach": 22 },
      "overhead": 12,
      "margin": 15,
      "tax": { "name": "VAT", "percent": 20 }
    },
    "heading": "Made in the bench shop",
    "customer": "A customer",
    "number": "2026-014",
    "validUntil": "2026-04-30",
    "terms": "Good for thirty days",
    "extras": [{ "what": "Paint", "amount": 120 }],
    "took": [{ "line": "bending", "hours": 2.5, "paid": 3, "on": "2026-03-02", "remark": "one tube twice" }]
  },
  "pulls": [
    { "section": "main", "die": "d1", "batch": "H-204", "pulled": 63.2, "net": 60, "on": "2026-03-02" }
  ],
  "bent": [],
  "made": [],
  "feeds": [
    { "from": "A", "tube": "stay'" }
  ],
  "seen": [],
  "printed": [],
  "scans": [],
  "certificates": [],
  "photos": [],
  "variants": [],
  "later": { "kerf": 2.5, "racks": [{ "section": "main", "length": 6096 }] }
}
`);
  });
});
