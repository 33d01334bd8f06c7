/** The columns of the nodes' tables: what a place is given by, kind by kind. */
import { renameNode, setPlace } from '../../core/edit/nodes.ts';
import { ORIGIN, type Axis, type Vec3 } from '../../core/geometry/vector.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import type { Coordinate } from '../../core/job/places/coordinate.ts';
import type { Clear } from '../../core/job/places/point.ts';
import type { Job } from '../../core/job/types.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import type { Way } from '../../core/shape/ways.ts';
import type { Frame } from '../../core/solve/types.ts';
import { jobDocument } from '../../store/page.ts';
import type { Choice } from '../fields/Fields.tsx';
import { withImages } from '../kit/names.ts';
import { choiceColumn, lengthColumn, numberColumn, textColumn, type Column } from '../table/columns.tsx';
import { CAR_AXES, withAxis } from '../kit/vectors.ts';
import { COMES_TO, originChoices, originOf, sourceChoices, tubeChoices } from './choices.ts';
import { amountOf, byOtherAxis, comesTo, sourceOf, withAmount, withOrigin, withSource } from './places.ts';

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

/** In two lines where there are more columns than a panel is wide: so many stand in the first. */
export const FIRST_LINE: Readonly<Partial<Record<Way, number>>> = {
  point: 2,
  clear: 3,
  on: 3,
  until: 4,
  ray: 2,
  'lined-up': 4,
};

export function nodeColumns(way: Way, among: NodeChoices): Column<FrameNode>[] {
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

  switch (way) {
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
    case 'clear':
      return [
        name,
        choice(
          'point',
          'Point',
          (at) => at.point,
          () => among.points,
          (at, point) => ({ ...at, point }),
        ),
        length(
          'point',
          { header: 'Gap', means: 'to the tube' },
          (at) => at.clear?.gap ?? 0,
          (at, gap) => withClear(at, { gap }),
        ),
        ...arrow(
          'point',
          (at) => at.clear?.direction ?? ORIGIN,
          (at, direction) => withClear(at, { direction }),
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
        tube('on'),
        choice(
          'on',
          'From',
          (at) => (at.until === undefined ? originOf(at) : ''),
          (at) => originChoices(bendsOf.get(at.member) ?? 0),
          (at, origin) => (at.until === undefined ? withOrigin(at, origin) : at),
        ),
        length(
          'on',
          { header: 'Distance', means: 'on the tube' },
          (at) => at.distance ?? 0,
          (at, distance) => (at.until === undefined ? { ...at, distance } : at),
        ),
        ...trio(
          'on',
          (at) => at.offset,
          (at, offset) => ({ ...at, offset }),
        ),
      ];
    case 'until':
      return [
        name,
        tube('on'),
        choice(
          'on',
          'Where its',
          (at) => at.until?.axis ?? '',
          () => COMES_TO,
          (at, axis) => (at.until === undefined ? at : byOtherAxis(jobDocument.getState().derived, at, axis as Axis)),
        ),
        source(
          'on',
          'is as',
          (at) => at.until ?? NO_COORDINATE,
          (at) => at.until?.axis ?? 'z',
          (at, given) => (at.until === undefined ? at : { ...at, until: { ...given, axis: at.until.axis } }),
        ),
        length(
          'on',
          { header: 'is', means: 'or more' },
          (at) => amountOf(at.until ?? NO_COORDINATE),
          (at, mm) => (at.until === undefined ? at : { ...at, until: withAmount(at.until, mm) }),
        ),
        numberColumn<FrameNode>(
          { least: 1, greatest: 99, step: 1 },
          {
            header: 'Time',
            means: 'from A',
            step: STEP,
            value: ({ at }) => (at.kind === 'on' ? (at.nth ?? 1) : 1),
            change: placing('on', (at, nth) => (at.until === undefined ? at : { ...at, nth })),
          },
        ),
        ...trio(
          'on',
          (at) => at.offset,
          (at, offset) => ({ ...at, offset }),
        ),
      ];
    case 'crossing':
      return [
        name,
        tube('crossing'),
        choice(
          'crossing',
          'Line from',
          (at) => at.line[0],
          () => among.nodes,
          (at, first) => ({ ...at, line: [first, at.line[1]] }),
        ),
        choice(
          'crossing',
          'Through',
          (at) => at.line[1],
          () => among.nodes,
          (at, second) => ({ ...at, line: [at.line[0], second] }),
        ),
      ];
    case 'lined-up':
      return [
        name,
        ...LINED_UP.map(({ axis, header }) =>
          source(
            'lined-up',
            `${header} as`,
            (at) => at[axis],
            () => axis,
            (at, given) => ({ ...at, [axis]: given }),
          ),
        ),
        ...LINED_UP.map(({ axis, header }) =>
          length(
            'lined-up',
            { header, means: 'or more' },
            (at) => amountOf(at[axis]),
            (at, mm) => ({ ...at, [axis]: withAmount(at[axis], mm) }),
          ),
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
        ...arrow(
          'ray',
          (at) => at.direction,
          (at, direction) => ({ ...at, direction }),
        ),
        choice(
          'ray',
          'Until',
          (at) => at.until.axis,
          () => COMES_TO,
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

const LINED_UP = (['x', 'y', 'z'] as const).map((axis, i) => ({ axis, header: CAR_AXES[i]!.header }));

/** Of places on a tube that are given by no coordinate; they have no row in that table. */
const NO_COORDINATE: Coordinate = { value: 0 };

const withClear = (at: Of<'point'>, change: Partial<Clear>): Place =>
  at.clear === undefined ? at : { ...at, clear: { ...at.clear, ...change } };

/** Puts a value into the place that the job holds now, which a paste may already have changed in another column. */
const placing =
  <K extends Place['kind'], T>(kind: K, put: (at: Of<K>, value: T) => Place) =>
  (job: Job, { id }: FrameNode, value: T): Job => {
    const at = job.nodes.find((node) => node.id === id)?.at;
    return at?.kind === kind ? setPlace(job, id, put(at as Of<K>, value)) : job;
  };
