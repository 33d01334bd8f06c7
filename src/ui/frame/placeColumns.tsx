/** What the columns of the nodes' tables are made of: one kind of value each, of places of one kind. */
import { renameNode, setPlace } from '../../core/edit/nodes.ts';
import type { Axis, Vec3 } from '../../core/geometry/vector.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import type { Coordinate } from '../../core/job/places/coordinate.ts';
import type { Job } from '../../core/job/types.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { comesTo } from '../../core/shape/ways.ts';
import type { Frame } from '../../core/solve/types.ts';
import { jobDocument } from '../../store/page.ts';
import type { Choice } from '../fields/Fields.tsx';
import { withImages } from '../kit/names.ts';
import { choiceColumn, lengthColumn, numberColumn, textColumn, type Column } from '../table/columns.tsx';
import { CAR_AXES, withAxis } from '../kit/vectors.ts';
import { sourceChoices, tubeChoices } from './choices.ts';
import { sourceOf, withSource } from './places.ts';

const STEP = 'Move a node';

/** What the columns choose from. */
export interface NodeChoices {
  readonly unit: LengthUnit;
  readonly points: readonly Choice[];
  readonly nodes: readonly Choice[];
  readonly tubes: readonly Choice[];
  /** What a coordinate may follow. */
  readonly sources: readonly Choice[];
  /** How many bends each tube has. Pairs, not a map: the choices are compared as plain data. */
  readonly bends: readonly (readonly [tube: string, bends: number])[];
}

export const nodeChoices = (job: Job, bars: Frame['bars']): NodeChoices => ({
  unit: job.lengthUnit,
  points: withImages(job.points),
  nodes: withImages(job.nodes),
  tubes: tubeChoices(job),
  sources: sourceChoices(job),
  bends: [...bars].map(([id, bar]) => [id, bar.bends.length]),
});

export type Of<K extends Place['kind']> = Extract<Place, { kind: K }>;

/** The columns choose from `among`. Each is asked for places of one kind: the other kinds have no row in its table. */
export function placeColumns(among: NodeChoices) {
  const name = textColumn<FrameNode>({
    header: 'Node',
    step: 'Rename a node',
    value: (node) => node.name,
    change: (before, { id }, value) => renameNode(before, id, value),
  });

  function length<K extends Place['kind']>(
    of: K,
    heading: { readonly header: string; readonly means?: string },
    value: (at: Of<K>) => number,
    put: (at: Of<K>, value: number) => Place,
  ): Column<FrameNode> {
    return lengthColumn<FrameNode>(among.unit, {
      ...heading,
      step: STEP,
      value: (node) => value(node.at as Of<K>),
      change: placing(of, put),
    });
  }

  function choice<K extends Place['kind']>(
    of: K,
    header: string,
    value: (at: Of<K>) => string,
    choices: (at: Of<K>) => readonly Choice[],
    put: (at: Of<K>, value: string) => Place,
  ): Column<FrameNode> {
    return choiceColumn<FrameNode>({
      header,
      step: STEP,
      value: (node) => value(node.at as Of<K>),
      choices: (node) => choices(node.at as Of<K>),
      change: placing(of, put),
    });
  }

  function trio<K extends Place['kind']>(
    of: K,
    value: (at: Of<K>) => Vec3,
    put: (at: Of<K>, value: Vec3) => Place,
  ): Column<FrameNode>[] {
    return CAR_AXES.map((heading, axis) =>
      length(
        of,
        heading,
        (at) => value(at)[axis] ?? 0,
        (at, part) => put(at, withAxis(value(at), axis as 0 | 1 | 2, part)),
      ),
    );
  }

  const arrow = <K extends Place['kind']>(
    of: K,
    value: (at: Of<K>) => Vec3,
    put: (at: Of<K>, value: Vec3) => Place,
  ): Column<FrameNode>[] =>
    CAR_AXES.map(({ header, means }, axis) =>
      numberColumn<FrameNode>(
        { least: -100_000, greatest: 100_000, step: 0.01 },
        {
          header: `Way ${header.toLowerCase()}`,
          means,
          step: STEP,
          value: (node) => value(node.at as Of<K>)[axis] ?? 0,
          change: placing(of, (at, part) => put(at, withAxis(value(at), axis as 0 | 1 | 2, part))),
        },
      ),
    );

  const tube = (of: 'on' | 'crossing'): Column<FrameNode> =>
    choice(
      of,
      'Tube',
      (at) => at.member,
      () => among.tubes,
      (at, member) => ({ ...at, member }),
    );

  /** What a coordinate follows; made a number of its own, it stays what it is. */
  const source = <K extends Place['kind']>(
    of: K,
    header: string,
    value: (at: Of<K>) => Coordinate,
    axis: (at: Of<K>) => Axis,
    put: (at: Of<K>, given: Coordinate) => Place,
  ): Column<FrameNode> =>
    choice(
      of,
      header,
      (at) => sourceOf(value(at)),
      () => among.sources,
      (at, from) => put(at, withSource(value(at), from, comesTo(jobDocument.getState().derived, value(at), axis(at)))),
    );

  /** A plain number. */
  const number = <K extends Place['kind']>(
    of: K,
    limits: { readonly least: number; readonly greatest: number; readonly step: number },
    heading: { readonly header: string; readonly means: string },
    value: (at: Of<K>) => number,
    put: (at: Of<K>, value: number) => Place,
  ): Column<FrameNode> =>
    numberColumn<FrameNode>(limits, {
      ...heading,
      step: STEP,
      value: (node) => value(node.at as Of<K>),
      change: placing(of, put),
    });

  return { name, length, choice, trio, arrow, tube, source, number };
}

/** Puts a value into the place that the job holds now, which a paste may already have changed in another column. */
const placing =
  <K extends Place['kind'], T>(kind: K, put: (at: Of<K>, value: T) => Place) =>
  (job: Job, { id }: FrameNode, value: T): Job => {
    const at = job.nodes.find((node) => node.id === id)?.at;
    return at?.kind === kind ? setPlace(job, id, put(at as Of<K>, value)) : job;
  };
