/** Ids, and references to them; a reference with a trailing ' is the mirror image, in y = 0, of what the bare id names. */

/** Flavoured strings: a plain string fits any, but one kind of id is not accepted for another. */
type Flavour<Name> = string & { readonly idOf?: Name };
export type PointId = Flavour<'point'>;
export type SectionId = Flavour<'section'>;
export type DieId = Flavour<'die'>;
export type NodeId = Flavour<'node'>;
export type MemberId = Flavour<'member'>;
export type FootId = Flavour<'foot'>;
export type GussetId = Flavour<'gusset'>;
export type EnvelopeId = Flavour<'envelope'>;
export type ScanId = Flavour<'scan'>;
export type PhotoId = Flavour<'photo'>;
export type BodyLineId = Flavour<'body-line'>;
/** A reference: an id, or an id with a prime (') for the mirror image in y = 0. */
export type PointRef = Flavour<'point' | 'point-ref'>;
export type NodeRef = Flavour<'node' | 'node-ref'>;
export type TubeRef = Flavour<'member' | 'tube-ref'>;

/** Whether it stands for the mirror image. */
export const isPrimed = (reference: string): boolean => reference.endsWith("'");

/** The id without its prime. */
export const bareId = (reference: string): string => (isPrimed(reference) ? reference.slice(0, -1) : reference);

/** The tube that is this piece, 1 = from end A, of a bar that is made in pieces: of harness harness.1, of door' door.1'. */
export const pieceId = (bar: TubeRef, piece: number): TubeRef =>
  isPrimed(bar) ? `${bareId(bar)}.${piece}'` : `${bar}.${piece}`;

/** A reference read as the name of a piece; null where it is none. That of a whole member may look like one: harness.1. */
export function pieceNamed(reference: TubeRef): { readonly member: MemberId; readonly piece: number } | null {
  const [, member, piece] = /^(.+)\.([1-9]\d*)$/u.exec(bareId(reference)) ?? [];
  return member === undefined ? null : { member, piece: Number(piece) };
}

/** The reference to the mirror image: adds the prime, or takes it away. */
export const primed = (reference: string): string => (isPrimed(reference) ? bareId(reference) : `${reference}'`);
