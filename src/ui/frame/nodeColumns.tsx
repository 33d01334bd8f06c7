/** The columns of the nodes' tables: what a place is given by, kind by kind. */
import { renameNode, setPlace } from '../../core/edit/nodes.ts';
import type { Axis, Vec3 } from '../../core/geometry/vector.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import type { Job } from '../../core/job/types.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Frame } from '../../core/solve/types.ts';
import type { Choice } from '../fields/Fields.tsx';
import { withImages } from '../kit/names.ts';
import { choiceColumn, lengthColumn, numberColumn, textColumn, type Column } from '../table/columns.tsx';
import { CAR_AXES, withAxis } from '../kit/vectors.ts';
import { originChoices, originOf, tubeChoices } from './choices.ts';
import { withOrigin } from './places.ts';

const STEP = 'Move a node';

/** What the columns choose from. */
export interface NodeChoices {
  readonly unit: LengthUnit;
  readonly points: readonly Choice[];
  readonly nodes: readonly Choice[];
  readonly tubes: readonly Choice[];
  /** How many bends each tube has. Pairs, not a map: the choices are compared as plain data. */
  readonly bends: readonly (readonly [tube: string, bends: number])[];
}

export const nodeChoices = (job: Job, bars: Frame['bars']): NodeChoices => ({
  unit: job.lengthUnit,
  points: withImages(job.points),
  nodes: withImages(job.nodes),
  tubes: tubeChoices(job),
  bends: [...bars].map(([id, bar]) => [id, bar.bends.length]),
});

/** In two lines where there are more columns than a panel is wide: so many stand in the first. */
export const FIRST_LINE: Readonly<Partial<Record<Place['kind'], number>>> = { point: 2, on: 3, ray: 2 };

export function nodeColumns(kind: Place['kind'], among: NodeChoices): Column<FrameNode>[] {
  const bendsOf = new Map(among.bends);
  const name = textColumn<FrameNode>({
    header: 'Node',
    step: 'Rename a node',
    value: (node) => node.name,
    change: (before, { id }, value) => renameNode(before, id, value),
  });

  /** A length of places of one kind; the other kinds have no row in this table. */
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

  switch (kind) {
    case 'fixed':
      return [
        name,
        ...trio(
          'fixed',
          (at) => at.position,
          (at, position) => ({ ...at, position }),
        ),
      ];
    case 'point':
      return [
        name,
        choice(
          'point',
          'Point',
          (at) => at.point,
          () => among.points,
          (at, point) => ({ ...at, point }),
        ),
        ...trio(
          'point',
          (at) => at.offset,
          (at, offset) => ({ ...at, offset }),
        ),
      ];
    case 'on':
      return [
        name,
        choice(
          'on',
          'Tube',
          (at) => at.member,
          () => among.tubes,
          (at, member) => ({ ...at, member }),
        ),
        choice('on', 'From', originOf, (at) => originChoices(bendsOf.get(at.member) ?? 0), withOrigin),
        length(
          'on',
          { header: 'Distance', means: 'on the tube' },
          (at) => at.distance,
          (at, distance) => ({ ...at, distance }),
        ),
        ...trio(
          'on',
          (at) => at.offset,
          (at, offset) => ({ ...at, offset }),
        ),
      ];
    case 'between':
      return [
        name,
        choice(
          'between',
          'From',
          (at) => at.nodes[0],
          () => among.nodes,
          (at, first) => ({ ...at, nodes: [first, at.nodes[1]] }),
        ),
        choice(
          'between',
          'To',
          (at) => at.nodes[1],
          () => among.nodes,
          (at, second) => ({ ...at, nodes: [at.nodes[0], second] }),
        ),
        numberColumn<FrameNode>(
          { least: -10, greatest: 10, step: 0.01 },
          {
            header: 'Part',
            means: '0 to 1',
            step: STEP,
            value: (node) => (node.at as Of<'between'>).fraction,
            change: placing('between', (at, fraction) => ({ ...at, fraction })),
          },
        ),
      ];
    case 'ray':
      return [
        name,
        choice(
          'ray',
          'From',
          (at) => at.from,
          () => among.nodes,
          (at, from) => ({ ...at, from }),
        ),
        ...CAR_AXES.map(({ header, means }, index) =>
          numberColumn<FrameNode>(
            { least: -100_000, greatest: 100_000, step: 0.01 },
            {
              header: `Way ${header.toLowerCase()}`,
              means,
              step: STEP,
              value: (node) => (node.at as Of<'ray'>).direction[index] ?? 0,
              change: placing('ray', (at, part) => ({
                ...at,
                direction: withAxis(at.direction, index as 0 | 1 | 2, part),
              })),
            },
          ),
        ),
        choice(
          'ray',
          'Until',
          (at) => at.until.axis,
          () => AXES,
          (at, axis) => ({ ...at, until: { ...at.until, axis: axis as Axis } }),
        ),
        length(
          'ray',
          { header: 'is' },
          (at) => at.until.value,
          (at, value) => ({ ...at, until: { ...at.until, value } }),
        ),
      ];
  }
}

type Of<K extends Place['kind']> = Extract<Place, { kind: K }>;

const AXES: readonly Choice[] = [
  { value: 'x', label: 'along' },
  { value: 'y', label: 'offset' },
  { value: 'z', label: 'height' },
];

/** Puts a value into the place that the job holds now, which a paste may already have changed in another column. */
const placing =
  <K extends Place['kind'], T>(kind: K, put: (at: Of<K>, value: T) => Place) =>
  (job: Job, { id }: FrameNode, value: T): Job => {
    const at = job.nodes.find((node) => node.id === id)?.at;
    return at?.kind === kind ? setPlace(job, id, put(at as Of<K>, value)) : job;
  };
