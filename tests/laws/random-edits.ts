/** Every edit that a person has, each made from a job and two random numbers: for the laws, and for runs of hundreds. */
import {
  beginRun,
  keepBend,
  logReading,
  removeRun,
  setBentRotation,
  setBentAcross,
  setBentStraight,
  setCheck,
  tickStep,
  untickStep,
} from '../../src/core/edit/bent.ts';
import { addBodyLine, removeBodyLine, updateBodyLine } from '../../src/core/edit/bodyLines.ts';
import {
  addDie,
  addObstacle,
  changeObstacle,
  clearBender,
  removeDie,
  removeObstacle,
  setBender,
  updateDie,
} from '../../src/core/edit/dies.ts';
import { setMarking, setTubeFrom, setTubeOrder } from '../../src/core/edit/feeds.ts';
import {
  addBox,
  addDriver,
  addGuessedDriver,
  removeEnvelope,
  setEye,
  setShoulders,
  updateBox,
  updateDriver,
  updateEnvelope,
} from '../../src/core/edit/envelopes.ts';
import {
  addGusset,
  flattenGusset,
  foldGusset,
  removeGusset,
  setGussetLeg,
  updateGusset,
} from '../../src/core/edit/gussets.ts';
import {
  addMember,
  insertPathNode,
  moveMember,
  removePathNode,
  setDie,
  setEnd,
  updateMember,
} from '../../src/core/edit/members.ts';
import {
  addNode,
  moveNode,
  removeNode,
  renameNode,
  setFraction,
  setOnDistance,
  setPlace,
  setRayValue,
} from '../../src/core/edit/nodes.ts';
import { addPointFromScan, addScan, removeScan, updateScan } from '../../src/core/edit/scans.ts';
import { quarterTurned } from '../../src/core/scan/place.ts';
import { withoutPair, withPair } from '../../src/core/shape/scans.ts';
import type { Scan } from '../../src/core/job/kinds/scan.ts';
import { addCertificate, removeCertificate, updateCertificate } from '../../src/core/edit/certificates.ts';
import { addPhoto, datePhoto, namePhoto, removePhoto, showsTube } from '../../src/core/edit/photos.ts';
import { addPoint, movePoint, removePoint, renamePoint } from '../../src/core/edit/points.ts';
import { addPull, removePull, setBatch, updatePull } from '../../src/core/edit/pulls.ts';
import { patched, type Edited } from '../../src/core/edit/records.ts';
import { addSection, removeSection, setStick, updateSection } from '../../src/core/edit/sections.ts';
import { removeSeveral } from '../../src/core/edit/several.ts';
import type { BendStep, DrawnTube } from '../../src/core/job/kinds/bent.ts';
import type { Obstacle } from '../../src/core/job/kinds/obstacle.ts';
import type { Job } from '../../src/core/job/types.ts';
import { derive } from '../../src/core/derive.ts';
import { swapThrough } from '../../src/core/edit/pieces.ts';
import { eachSideItsOwn } from '../../src/core/shape/each-side.ts';
import { oneForBothSides } from '../../src/core/shape/one-for-both.ts';
import { freeCorners } from '../../src/core/shape/gusset-corners.ts';
import { insertBend } from '../../src/core/shape/insert-bend.ts';
import { joinMembers, jointsOf } from '../../src/core/shape/join.ts';
import { splitMember } from '../../src/core/shape/split.ts';
import { reverseMember } from '../../src/core/shape/reverse.ts';
import type { Frame } from '../../src/core/solve/types.ts';

export type RandomEdit = (job: Job, a: number, b: number) => Edited;

/** Of the record that a random number falls on; the same job where there is none. */
const of =
  <T>(listOf: (job: Job) => readonly T[], change: (job: Job, record: T, a: number, b: number) => Edited): RandomEdit =>
  (job, a, b) => {
    const list = listOf(job);
    return list.length === 0 ? job : change(job, list[a % list.length]!, a, b);
  };

const points = ({ points: list }: Job) => list;
const lines = ({ bodyLines }: Job) => bodyLines;
const sections = ({ sections: list }: Job) => list;
const dies = ({ dies: list }: Job) => list;
const nodes = ({ nodes: list }: Job) => list;
const members = ({ members: list }: Job) => list;
const envelopes = ({ envelopes: list }: Job) => list;
const photos = ({ photos: list }: Job) => list;
const scans = ({ scans: list }: Job) => list;
const gussets = ({ gussets: list }: Job) => list;
const hasHoop = (job: Job): boolean => job.members.some(({ id }) => id === 'hoop');

const ORDER: readonly BendStep[] = [
  { bend: 2, front: 'A' },
  { bend: 1, front: 'B' },
];
const DRAWN: DrawnTube = { legs: [1100, 1000, 1100], angles: [84, 84], rotations: [0, 0] };
const SCAN: Omit<Scan, 'id' | 'name'> = {
  kind: 'points',
  accuracy: 2,
  file: 'inside.ply',
  data: 'none',
  unit: 'm',
  up: '-x',
  placement: { rotation: [10, 20, 30], shift: [1, 2, 3] },
  pairs: [],
  count: 1000,
  shown: true,
};
const WALL: Obstacle = { name: 'Wall', kind: 'plane', point: [0, 2000, 0], normal: [0, -1, 0] };
const namesTwin = (job: Job, id: string): boolean => JSON.stringify(job).includes(JSON.stringify(`${id}'`));
const orNone = (value: number): number | null => (value % 3 === 0 ? null : value / 10);
const primedAtTimes = (id: string, b: number): string => (b % 2 === 0 ? `${id}'` : id);

/** With the frame as it is solved; the same job where it cannot be. */
const inFrame =
  (change: (job: Job, frame: Frame, id: string, b: number) => Edited) =>
  (job: Job, { id }: { readonly id: string }, _: number, b: number): Edited => {
    const frame = derive(job);
    return frame.ok ? change(job, frame.value, id, b) : job;
  };

/** Of an answer that says more than the job. */
const jobIn = (before: Job, answer: { readonly job: Job } | Edited | null): Edited =>
  answer === null ? before : 'job' in answer ? answer.job : answer;

/** They go by the sample's ids where they need one: `hoop`, `d1`, `main`. */
export const RANDOM_EDITS: readonly RandomEdit[] = [
  (job, a) => patched(job, { name: `Job ${a}` }),
  (job, a) => patched<Job>(job, { lengthUnit: a % 2 === 0 ? 'in' : 'mm' }),

  (job, a) => addPoint(job, `Point ${a}`, [a, 0, 0]),
  of(points, (job, { id }, a, b) => movePoint(job, id, [b, a, 0])),
  of(points, (job, { id }, a) => renamePoint(job, id, `Point ${a}`)),
  of(points, (job, { id }) => removePoint(job, id)),
  of(points, (job, { id }, a, b) => addBodyLine(job, `Line ${a}`, [id, primedAtTimes(id, b)])),
  of(lines, (job, { id }, a) => updateBodyLine(job, id, { name: `Line ${a}` })),
  of(lines, (job, { id }) => removeBodyLine(job, id)),

  (job, a, b) => addNode(job, 'New', { kind: 'fixed', position: [a, b, 0] }),
  of(nodes, (job, { id }, a, b) => moveNode(job, primedAtTimes(id, b), [a, 3, b])),
  of(nodes, (job, { id }, _, b) => setOnDistance(job, id, b)),
  of(nodes, (job, { id }, _, b) => setFraction(job, id, b / 1000)),
  of(nodes, (job, { id }, _, b) => setRayValue(job, primedAtTimes(id, b), 500 + b)),
  of(nodes, (job, { id }, a) => renameNode(job, id, `Node ${a}`)),
  of(nodes, (job, { id }, a, b) => setPlace(job, id, { kind: 'fixed', position: [a, b, a + b] })),
  of(nodes, (job, { id }, a, b) =>
    setPlace(job, id, { kind: 'between', nodes: ['foot', job.nodes[b % job.nodes.length]!.id], fraction: a / 1000 }),
  ),
  of(nodes, (job, { id }, a, b) => {
    const other = primedAtTimes(job.nodes[b % job.nodes.length]!.id, a);
    return setPlace(job, id, {
      kind: 'lined-up',
      x: { value: a },
      y: { node: other, plus: b },
      z: { node: 'foot', plus: 0 },
    });
  }),
  of(nodes, (job, { id }, a, b) => {
    if (!hasHoop(job)) return job;
    const other = primedAtTimes(job.nodes[b % job.nodes.length]!.id, a);
    return setPlace(job, id, { kind: 'crossing', member: 'hoop', line: ['foot', other] });
  }),
  of(nodes, (job, { id }, a, b) => {
    if (!hasHoop(job)) return job;
    return setPlace(job, id, {
      kind: 'on',
      member: 'hoop',
      until: { axis: 'z', value: a },
      nth: 1 + (b % 2),
      offset: [0, 0, 0],
    });
  }),
  of(points, (job, { id }, a, b) =>
    addNode(job, 'Clear', {
      kind: 'point',
      point: primedAtTimes(id, b),
      offset: [0, a, 0],
      clear: { direction: [0, -1, 0], gap: b },
    }),
  ),
  of(nodes, (job, { id }) => removeNode(job, id)),

  of(nodes, (job, { id }, _, b) =>
    addMember(job, {
      name: 'New',
      path: [id, job.nodes[b % job.nodes.length]!.id],
      section: 'main',
      mirror: b % 3 === 0,
    }),
  ),
  of(members, (job, { id }, _, b) => insertPathNode(job, id, b % 3, `${job.nodes[b % job.nodes.length]!.id}'`)),
  of(members, (job, { id }, _, b) => removePathNode(job, id, b % 2)),
  of(members, (job, { id }, _, b) => moveMember(job, id, b % 5)),
  of(members, (job, { id }, _, b) => setEnd(job, id, b % 2 === 0 ? 0 : 1, { fit: 'square', allowance: b })),
  of(members, (job, { id }, _, b) => setEnd(job, id, b % 2 === 0 ? 0 : 1, { fit: 'auto', allowance: 0 })),
  of(members, (job, { id }, _, b) => updateMember(job, id, { role: `role ${b}` })),
  // While others name its twin, the door takes no member without one.
  of(members, (job, { id, mirror }) => (namesTwin(job, id) ? job : updateMember(job, id, { mirror: !mirror }))),
  of(members, (job, { id }, _, b) => setDie(job, id, b % 3 === 0 ? null : 'd1')),
  of(members, (job, { id }, _, b) => setBatch(job, id, b % 2 === 0 ? '' : `H-${b}`)),
  of(members, (job, { id }) => (job.members.length > 1 ? removeSeveral(job, 'members', [id]) : job)),

  of(members, inFrame(reverseMember)),
  of(
    members,
    inFrame((job, frame, id, b) => insertBend(job, frame, id, 2 * b)),
  ),

  of(
    members,
    inFrame((job, frame, id, b) => splitMember(job, frame, id, 2 * b)),
  ),
  of(
    members,
    inFrame((job, frame, id, b) => {
      const joints = jointsOf(job, id);
      return joints.length === 0 ? job : joinMembers(job, frame, id, joints[b % joints.length]!);
    }),
  ),
  of(
    members,
    inFrame((job, frame, id) => jobIn(job, eachSideItsOwn(job, frame, id))),
  ),
  of(
    members,
    inFrame((job, frame, id) => jobIn(job, oneForBothSides(job, frame, id))),
  ),
  of(members, (job, { id, cutBy }, a) => (cutBy === undefined ? job : swapThrough(job, id, cutBy[a % cutBy.length]!))),

  (job) => addSection(job, () => 'New'),
  of(sections, (job, { id }, _, b) => updateSection(job, id, { wall: 1 + b / 1000 })),
  of(sections, (job, { id }, a) => setStick(job, id, a % 3 === 0 ? null : a + 1)),
  of(sections, (job, { id }) => removeSection(job, id)),
  (job) => addDie(job, () => 'New'),
  of(dies, (job, { id }, _, b) => updateDie(job, id, { clampOffset: b / 10 })),
  of(dies, (job, { id }, a) => setBender(job, id, { planeHeight: a })),
  of(dies, (job, { id }) => clearBender(job, id)),
  of(dies, (job, { id }) => addObstacle(job, id, WALL)),
  of(dies, (job, { id }, a) => changeObstacle(job, id, a % 4, WALL)),
  of(dies, (job, { id }, a) => removeObstacle(job, id, a % 4)),
  of(dies, (job, { id }) => removeDie(job, id)),

  (job, a) => (job.scans.length < 5 ? addScan(job, { ...SCAN, name: `Scan ${a}` }) : job),
  of(scans, (job, { id }, a, b) => updateScan(job, id, { accuracy: a % 50, shown: b % 2 === 0 })),
  of(scans, (job, { id }, a, b) => {
    const point = job.points[a % Math.max(1, job.points.length)]?.id;
    return point === undefined
      ? job
      : withPair(job, id, { at: [a / 7, b / 3, (a * b) % 11], point: primedAtTimes(point, b) });
  }),
  of(scans, (job, { id, pairs }, a) =>
    pairs.length === 0 ? job : withoutPair(job, id, pairs[a % pairs.length]!.point),
  ),
  of(scans, (job, { id }, a, b) => addPointFromScan(job, id, `Picked ${a}`, [a, b, 1])),
  of(scans, (job, { id, placement }) => updateScan(job, id, { placement: quarterTurned(placement) })),
  of(scans, (job, { id }) => removeScan(job, id)),

  (job, a, b) => addCertificate(job, { batch: `Heat ${a}`, certificate: `No. ${b}` }),
  (job, a, b) => updateCertificate(job, a % 4, { note: b % 2 === 0 ? '' : 'Copy', section: b % 3 === 0 ? 'main' : '' }),
  (job, a) => removeCertificate(job, a % 4),
  (job, a) => addPhoto(job, { name: `Photo ${a}`, sum: (a % 9).toString(16).padStart(24, '0') }),
  of(photos, (job, { id }, a, b) => datePhoto(namePhoto(job, id, `Named ${a}`), id, b % 2 === 0 ? '' : '2026-03-02')),
  of(photos, (job, { id }, a, b) => showsTube(job, id, primedAtTimes('stay', b), a % 2 === 0)),
  of(photos, (job, { id }) => removePhoto(job, id)),

  (job, a) => addBox(job, (['head', 'wheel', 'knees', 'door', 'sight'] as const)[a % 5]!, `Box ${a}`),
  (job, a) => addGuessedDriver(job, `Driver ${a}`, `Top ${a}`),
  of(points, (job, { id }, a, b) => addDriver(job, `Driver ${a}`, primedAtTimes(id, b))),
  of(envelopes, (job, { id }, a, b) => updateBox(job, id, { centre: [a, b, 1000], rotation: [a % 9, 0, b % 9] })),
  of(envelopes, (job, { id }, a, b) => updateDriver(job, id, { motion: { forward: a, back: 0, side: b, up: 1 } })),
  of(envelopes, (job, { id }, a, b) => {
    const point = job.points[a % Math.max(1, job.points.length)]?.id;
    return point === undefined ? job : updateDriver(job, id, { helmetTop: primedAtTimes(point, b) });
  }),
  of(envelopes, (job, { id }, a) => setEye(job, id, job.points[a % (job.points.length + 1)]?.id ?? null)),
  of(envelopes, (job, { id }, a, b) => {
    const [one, other] = [a, b].map((at) => job.points[at % (job.points.length + 1)]?.id);
    return setShoulders(job, id, one === undefined || other === undefined || one === other ? null : [one, other]);
  }),
  of(envelopes, (job, { id }, _, b) => updateEnvelope(job, id, { gap: b })),
  of(envelopes, (job, { id }) => removeEnvelope(job, id)),

  of(
    nodes,
    inFrame((job, frame, id, b) => {
      const free = freeCorners(frame, primedAtTimes(id, b));
      return free.length === 0 ? job : addGusset(job, free[b % free.length]!.usual);
    }),
  ),
  of(gussets, (job, { id }, a, b) => setGussetLeg(job, id, a % 2 === 0 ? 0 : 1, 20 + b)),
  of(gussets, (job, { id }) => foldGusset(job, id, 40)),
  of(gussets, (job, { id }) => flattenGusset(job, id)),
  of(gussets, (job, { id, mirror }) => updateGusset(job, id, { mirror: !mirror })),
  of(gussets, (job, { id }) => removeGusset(job, id)),

  (job, a, b) =>
    addPull(job, {
      die: 'd1',
      section: 'main',
      pulled: 90 + (b % 9),
      net: 80 + (a % 9),
      on: '',
      batch: b % 2 ? 'H' : '',
    }),
  (job, a, b) => updatePull(job, a % 3, { net: 60 + (b % 9) }),
  (job, a) => removePull(job, a % 3),

  (job) => (hasHoop(job) ? beginRun(job, 'hoop', ORDER, DRAWN) : job),
  (job) => removeRun(job, 'hoop'),
  (job, a) => tickStep(job, 'hoop', `clamp ${a % 3}`),
  (job, a) => untickStep(job, 'hoop', `clamp ${a % 3}`),
  (job, a, b) => logReading(job, 'hoop', (a % 2) + 1, { pulled: 90 + (b % 9), net: 88, on: '' }),
  (job, a, b) => keepBend(job, 'hoop', (a % 2) + 1, b % 2 === 0),
  (job, a, b) => setBentRotation(job, 'hoop', (a % 2) + 1, orNone(b)),
  (job, a, b) => setBentStraight(job, 'hoop', (a % 2) + 1, orNone(b)),
  (job, a, b) => setBentAcross(job, 'hoop', (a % 2) + 1, b % 3 === 0 ? null : [40 + a / 10, 40 + b / 10]),
  (job, a, b) => setCheck(job, 'hoop', a % 2 === 0 ? 'chord' : 'width', orNone(b)),

  (job, a, b) => setMarking(job, { from: ENDS[a % 3]!, fine: b % 2 === 0 }),
  of(members, (job, { id }, a, b) => setTubeFrom(job, id, b % 2 === 0 ? ENDS[a % 3]! : null)),
  of(members, (job, { id }, _, b) => setTubeOrder(job, id, b % 2 === 0 ? ORDER : null)),
];

const ENDS = ['A', 'B', 'middle'] as const;
