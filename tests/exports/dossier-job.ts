/** The demo with what an inspector asks for: heats and certificates, bends that were read, gussets, and photos. */
import { MOTORSPORT_UK } from '../../src/core/rules/shipped/motorsport-uk.ts';
import { sumOf } from '../../src/core/scan/sum.ts';
import { demoText } from '../command-line.ts';
import { otherJpeg } from '../core/photo/small-jpeg.ts';

export const PHOTOS = Array.from({ length: 10 }, (_, i) => otherJpeg(i));

export const photosBySum = (): ReadonlyMap<string, Uint8Array> => new Map(PHOTOS.map((bytes) => [sumOf(bytes), bytes]));

/** Of the inspector, on what is measured as well. */
const WORD = { says: 'met', by: 'Lee', note: 'seen at the car', on: '2026-03-03' };

/** A sheet that was typed in a shop. */
const OWN = {
  sheet: 'club',
  body: 'Hill Club',
  edition: '2026',
  on: '2026-02-01',
  checks: [
    { article: '4.1', text: 'Main hoop in one piece.', kind: 'one-piece', mark: 'own', roles: ['main-hoop'] },
    { article: '4.2', text: 'Has a window net.', kind: 'ask', mark: 'quoted', roles: [] },
    {
      article: '4.3',
      text: 'Stays steep.',
      kind: 'tilt',
      mark: 'read',
      roles: ['rear-stay'],
      least: 89,
      question: 'stay-angle',
      answer: WORD,
    },
    { article: '4.4', text: 'Light cars.', kind: 'present', mark: 'own', roles: [], least: 1, massUpTo: 500 },
  ],
};

/** `lost` photos more than there are. */
export function inspectedText(lost = 0): string {
  const job = JSON.parse(demoText());
  const batches: Readonly<Record<string, string>> = { hoop: 'M-1', stay: 'M-1', leg: 'M-2', dash: 'L-7' };
  for (const member of job.members) {
    delete member.batch;
    if (batches[member.id] !== undefined) member.batch = batches[member.id];
  }
  job.certificates = [
    { batch: 'M-1', section: 'main', certificate: 'Paper 4711', note: 'in the folder' },
    { batch: 'L-7', certificate: 'Paper 12' },
    // Begun, and not typed yet.
    { batch: '', certificate: '' },
  ];
  job.bent = [
    {
      tube: 'hoop',
      order: [1, 2, 3, 4].map((bend) => ({ bend, front: 'A' })),
      done: ['cut', 'mark'],
      bends: [
        { bend: 1, pulled: 15, net: 13.2, across: [43.4, 45.4] },
        { bend: 2, pulled: 79, net: 75.6, rotation: 0.5, straight: 425 },
      ],
      checks: [{ check: 'chord', measured: 1200 }],
    },
  ];
  job.rules = [MOTORSPORT_UK, OWN];
  job.carMass = 900;
  job.photos = [
    ...PHOTOS.map((bytes) => sumOf(bytes)),
    ...Array.from({ length: lost }, (_, i) => `${i}`.repeat(24)),
  ].map((sum, i) => ({ id: `photo${i}`, name: `View ${i}`, sum, on: '2026-03-04', tubes: ['hoop', "stay'", 'gone'] }));
  return JSON.stringify(job);
}
