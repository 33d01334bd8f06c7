/** The edits that stations make: each answers the changed job, or why it cannot be changed. */
import type { Vec3 } from '../core/geometry/vector.ts';
import { bareId } from '../core/job/reference.ts';
import type { BodyLine, Die, EndFit, Envelope, Fault, FrameNode, Job, Member, Place, PointRef, Section } from '../core/job/types.ts';
import type { Frame } from '../core/solve/types.ts';

type Key = 'points' | 'bodyLines' | 'sections' | 'dies' | 'nodes' | 'members' | 'envelopes';
const update = <T extends { id: string }>(records: readonly T[], id: string, patch: Partial<T>): T[] =>
  records.map((record) => (record.id === id ? { ...record, ...patch } : record));
const freeId = (job: Job, key: Key, stem: string): string => {
  const base = stem.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'x';
  const taken = new Set(job[key].map(({ id }) => id as string));
  let id = base;
  for (let n = 2; taken.has(id); n += 1) id = `${base}-${n}`;
  return id;
};
const fault = (message: string): Fault[] => [{ place: '', message }];
const drop = (job: Job, key: Key, id: string): Job => ({ ...job, [key]: job[key].filter((record) => record.id !== id) });

export const movePoint = (job: Job, id: string, position: Vec3): Job => ({ ...job, points: update(job.points, id, { position }) });
export const renamePoint = (job: Job, id: string, name: string): Job => ({ ...job, points: update(job.points, id, { name }) });
export const addPoint = (job: Job, name: string, position: Vec3): Job => ({ ...job, points: [...job.points, { id: freeId(job, 'points', name), name, position }] });
export const removePoint = (job: Job, id: string): Job | Fault[] => {
  const users = job.nodes.filter((n) => n.at.kind === 'point' && bareId(n.at.point) === id).map((n) => `node ${n.name}`);
  return users.length > 0 ? fault(`used by ${users.join(', ')}`) : drop(job, 'points', id);
};
export const updateBodyLine = (job: Job, id: string, patch: Partial<BodyLine>): Job => ({ ...job, bodyLines: update(job.bodyLines, id, patch) });
export const addBodyLine = (job: Job, name: string, points: readonly PointRef[]): Job => ({ ...job, bodyLines: [...job.bodyLines, { id: freeId(job, 'bodyLines', name), name, points }] });
export const removeBodyLine = (job: Job, id: string): Job => drop(job, 'bodyLines', id);
export const updateEnvelope = (job: Job, id: string, patch: Partial<Envelope>): Job => ({ ...job, envelopes: update(job.envelopes, id, patch) });
export const addEnvelope = (job: Job): Job => ({ ...job, envelopes: [...job.envelopes, { id: freeId(job, 'envelopes', 'box'), name: 'Helmet', kind: 'box', centre: [0, 330, 1000], size: [330, 280, 330], rotation: [0, 0, 0], gap: 50 }] });
export const removeEnvelope = (job: Job, id: string): Job => drop(job, 'envelopes', id);
export const updateSection = (job: Job, id: string, patch: Partial<Section>): Job => ({ ...job, sections: update(job.sections, id, patch) });
export const addSection = (job: Job): Job => ({ ...job, sections: [...job.sections, { id: freeId(job, 'sections', 'section'), name: 'New section', outerDiameter: 44.45, wall: 3.048, material: '' }] });
export const removeSection = (job: Job, id: string): Job => drop(job, 'sections', id);
export const updateDie = (job: Job, id: string, patch: Partial<Die>): Job => ({ ...job, dies: update(job.dies, id, patch) });
export const addDie = (job: Job): Job => ({ ...job, dies: [...job.dies, { id: freeId(job, 'dies', 'die'), name: 'New die', outerDiameter: 44.45, centrelineRadius: 152.4, clampOffset: 0, leastStraight: 0, leastGrip: 0, greatestAngle: 180 }] });
export const removeDie = (job: Job, id: string): Job => drop(job, 'dies', id);
export const updateMember = (job: Job, id: string, patch: Partial<Member>): Job => ({ ...job, members: update(job.members, id, patch) });
export const setDie = (job: Job, id: string, die: string | null): Job => ({
  ...job,
  members: job.members.map((m) => {
    if (m.id !== id) return m;
    const { die: _, ...rest } = m;
    return die === null ? rest : { ...rest, die };
  }),
});
export const setEnd = (job: Job, id: string, which: 0 | 1, end: EndFit): Job => ({
  ...job,
  members: job.members.map((m) => (m.id === id ? { ...m, ends: which === 0 ? [end, m.ends[1]] : [m.ends[0], end] } : m)),
});
export const addMember = (job: Job, given: { name: string; path: readonly string[]; section: string }): Job => ({
  ...job,
  members: [...job.members, { id: freeId(job, 'members', given.name), role: '', mirror: false, ends: [{ fit: 'auto', allowance: 0 }, { fit: 'auto', allowance: 0 }], ...given }],
});
export const moveMember = (job: Job, id: string, to: number): Job => {
  const from = job.members.findIndex((m) => m.id === id);
  return { ...job, members: job.members.toSpliced(from, 1).toSpliced(to, 0, job.members[from]!) };
};
export const removeMember = (job: Job, id: string): Job | Fault[] => drop(job, 'members', id);
export const renameNode = (job: Job, id: string, name: string): Job => ({ ...job, nodes: update<FrameNode>(job.nodes, id, { name }) });
export const setPlace = (job: Job, id: string, at: Place): Job => ({ ...job, nodes: update<FrameNode>(job.nodes, id, { at }) });
export const addNode = (job: Job, name: string, at: Place): Job => ({ ...job, nodes: [...job.nodes, { id: freeId(job, 'nodes', name), name, at }] });
export const removeNode = (job: Job, id: string): Job | Fault[] => drop(job, 'nodes', id);
export const changeKind = (job: Job, frame: Frame, id: string, kind: Place['kind']): Job => setPlace(job, id, { kind: 'fixed', position: frame.nodes.get(id)! });
