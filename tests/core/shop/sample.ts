/** A shop that has one of everything, as plain data. Made up; nobody's. */
import { sampleFile } from '../job/sample.ts';

export const shopFile = () => {
  const { sections, dies, pulls } = sampleFile();
  const [{ bender, ...die }] = dies as [(typeof dies)[0]];
  return {
    format: 'cagewright/shop',
    version: 1,
    bender,
    marking: { from: 'B', mark: 'clamp', fine: true },
    footTrim: 38,
    sawing: { kerf: 1.8, squareOff: 5, keepFrom: 200 },
    scatter: { angle: 0.4, rotation: 0.6, mark: 0.8 },
    sections: [
      ...sections.map((section) => ({ ...section, stick: 6096 })),
      { id: 's2', name: '1 1/2 x .095', outerDiameter: 38.1, wall: 2.413, material: '4130-n' },
    ],
    dies: [
      die,
      {
        id: 'd2',
        name: '4 1/2 in CLR',
        outerDiameter: 38.1,
        centrelineRadius: 114.3,
        clampOffset: 101.6,
        leastStraight: 50,
        leastGrip: 140,
        greatestAngle: 180,
        radius: 'from-pulls',
      },
    ],
    pulls: [...pulls, { die: 'd2', section: 's2', pulled: 93.5, net: 90, on: '2026-04-11' }],
    benchSaw: 45,
    rates: { currency: 'EUR', hourly: 62, minutes: { cope: 12 }, overhead: 10 },
    notchers: [{ name: 'Bench notcher', greatestOffSquare: 50, takesOffset: true, step: 0.5, leans: 'either' }],
    saws: [{ diameter: 44.45, reach: 41 }, { diameter: 38.1 }],
    sticks: [{ section: 'main', length: 6096, count: 7, batch: 'H-204', cost: 118.5 }],
    instruments: [
      { name: 'Long tape', reads: ['distance', 'width'], sigma: 1.2 },
      { name: 'Bevel box', reads: ['inclination'], sigma: 0.1 },
    ],
    rules: [
      {
        sheet: 'valley-hill-climb-2026',
        body: 'Valley Hill Climb',
        edition: '2026',
        on: '2026-03-02',
        checks: [{ article: '8.2', kind: 'tilt', of: 'axis', roles: ['rear-stay'], least: 30, mark: 'read', text: '' }],
      },
    ],
    welders: [{ name: 'kept, and not used' }],
  };
};
