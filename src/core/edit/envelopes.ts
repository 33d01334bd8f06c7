/** Edits of what tubes must keep clear of, boxes and drivers. Nothing refers to one, so one can always be deleted. */
import { add, type Vec3 } from '../geometry/vector.ts';
import {
  NO_MOTION,
  USUAL_HELMET,
  type BoxEnvelope,
  type DriverEnvelope,
  type Envelope,
} from '../job/kinds/envelope.ts';
import type { EnvelopeId, PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { placeOfPoint } from '../survey/measured-points.ts';
import { nextId } from './ids.ts';
import { appendRecord, changeRecord, patched, takeOut } from './records.ts';

/** What a box is put round. */
export type BoxUse = 'head' | 'wheel' | 'knees' | 'door' | 'sight';

interface Start extends Pick<BoxEnvelope, 'size' | 'gap'> {
  /** Of its middle from the top of the first driver's helmet. */
  readonly from: Vec3;
}

/** Invented sizes, to be put right on the car; the head's is a helmet with some lean. */
const STARTS: Readonly<Record<BoxUse, Start>> = {
  head: { size: [330, 280, 330], gap: 50.8, from: [0, 0, -165] },
  wheel: { size: [250, 450, 450], gap: 50.8, from: [450, 0, -450] },
  knees: { size: [350, 500, 300], gap: 25.4, from: [650, 0, -600] },
  door: { size: [1000, 80, 600], gap: 12.7, from: [300, 340, -450] },
  sight: { size: [1000, 400, 120], gap: 0, from: [700, 0, -130] },
};

/** mm. Beyond the visor. */
const BEFORE_EYE: Vec3 = [600, 0, 0];

/** Where the first driver's helmet tops out; without a driver at head height on the centre plane, mm. */
function headTop(job: Job): Vec3 {
  const driver = job.envelopes.find(({ kind }) => kind === 'driver');
  const top = driver?.kind === 'driver' ? placeOfPoint(job, driver.helmetTop) : null;
  return top ?? [0, 0, 1165];
}

/** Where the first driver looks out; null where that was not measured. */
function firstEye(job: Job): Vec3 | null {
  const driver = job.envelopes.find(({ kind }) => kind === 'driver');
  return driver?.kind === 'driver' && driver.eye !== undefined ? placeOfPoint(job, driver.eye) : null;
}

/**
 * A new box, called `name`, of a size to begin with and where such a thing may be: a start to edit from. A door lies to the driver's own side, a sight line
 * before the eye.
 */
export function addBox(job: Job, use: BoxUse, name: string): Job {
  const { size, gap, from } = STARTS[use];
  const eye = use === 'sight' ? firstEye(job) : null;
  const top = eye ?? headTop(job);
  const [along, out, up] = eye === null ? from : BEFORE_EYE;
  return appendRecord(job, 'envelopes', {
    id: nextId(job, 'envelopes'),
    name,
    kind: 'box',
    centre: add(top, [along, top[1] < 0 ? -out : out, up]),
    size,
    rotation: [0, 0, 0],
    gap,
  });
}

/** A person whose helmet's highest place is at the point, in the usual helmet, who does not move yet; two inches to keep. */
export const addDriver = (job: Job, name: string, helmetTop: PointRef): Job =>
  appendRecord(job, 'envelopes', {
    id: nextId(job, 'envelopes'),
    name,
    kind: 'driver',
    helmetTop,
    helmet: USUAL_HELMET,
    motion: NO_MOTION,
    gap: ASKED_GAP,
  });

/** mm: two inches. */
const ASKED_GAP = 50.8;

/**
 * The same at a point that is a guess still: on top of the first box, which is most often put round a head; to the left, or to the right where
 * somebody sits on the left; and not in the hoop behind: `behind` is the car's x of the front of its wall, null where there is none.
 */
export function addGuessedDriver(job: Job, name: string, pointName: string, behind: number | null = null): Job {
  const id = nextId(job, 'points');
  const [box] = job.envelopes.flatMap((each) => (each.kind === 'box' ? [each] : []));
  const [along, out, up] = box === undefined ? GUESSED_TOP : add(box.centre, [0, 0, box.size[2] / 2]);
  const isTaken = job.envelopes.some(
    (envelope) => envelope.kind === 'driver' && placeOfPoint(job, envelope.helmetTop)![1] > 0,
  );
  const ahead = behind === null || box !== undefined ? along : Math.max(along, behind + AHEAD);
  const position: Vec3 = [ahead, isTaken ? -Math.abs(out) : Math.abs(out), up];
  return addDriver(appendRecord(job, 'points', { id, name: pointName, position, guessed: true }), name, id);
}

/** mm from the hoop's wall to the helmet's top: half a helmet, what is asked for, and an inch. */
const AHEAD = USUAL_HELMET[0] / 2 + ASKED_GAP + 25.4;

/** mm. Invented. */
const GUESSED_TOP: Vec3 = [0, 340, 1000];

export const updateEnvelope = (job: Job, id: EnvelopeId, fields: Partial<Pick<BoxEnvelope, 'name' | 'gap'>>): Job =>
  changeRecord(job, 'envelopes', id, (envelope) => patched<Envelope>(envelope, fields));

export const updateBox = (
  job: Job,
  id: EnvelopeId,
  fields: Partial<Pick<BoxEnvelope, 'centre' | 'size' | 'rotation'>>,
): Job =>
  changeRecord(job, 'envelopes', id, (envelope) =>
    envelope.kind === 'box' ? patched<BoxEnvelope>(envelope, fields) : envelope,
  );

export const updateDriver = (
  job: Job,
  id: EnvelopeId,
  fields: Partial<Pick<DriverEnvelope, 'helmetTop' | 'helmet' | 'motion'>>,
): Job =>
  changeRecord(job, 'envelopes', id, (envelope) =>
    envelope.kind === 'driver' ? patched<DriverEnvelope>(envelope, fields) : envelope,
  );

/** null: it was not measured. */
export const setEye = (job: Job, id: EnvelopeId, eye: PointRef | null): Job =>
  changeDriver(job, id, (driver) => {
    if ((driver.eye ?? null) === eye) return driver;
    const { eye: _, ...rest } = driver;
    return eye === null ? rest : { ...rest, eye };
  });

/** Where the belts leave them; null: not measured. */
export const setShoulders = (job: Job, id: EnvelopeId, shoulders: readonly [PointRef, PointRef] | null): Job =>
  changeDriver(job, id, (driver) => {
    const { shoulders: before, ...rest } = driver;
    if (before?.[0] === shoulders?.[0] && before?.[1] === shoulders?.[1]) return driver;
    return shoulders === null ? rest : { ...rest, shoulders };
  });

const changeDriver = (job: Job, id: EnvelopeId, change: (driver: DriverEnvelope) => DriverEnvelope): Job =>
  changeRecord(job, 'envelopes', id, (envelope) => (envelope.kind === 'driver' ? change(envelope) : envelope));

export const removeEnvelope = (job: Job, id: EnvelopeId): Job => takeOut(job, 'envelopes', new Set([id]));
