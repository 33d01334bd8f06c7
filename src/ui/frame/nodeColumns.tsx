/** The columns of the nodes' tables: what a place is given by, way by way. */
import { ORIGIN, type Axis } from '../../core/geometry/vector.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import type { Place } from '../../core/job/places.ts';
import type { Coordinate } from '../../core/job/places/coordinate.ts';
import type { Clear } from '../../core/job/places/point.ts';
import type { Way } from '../../core/shape/ways.ts';
import { jobDocument } from '../../store/page.ts';
import type { Column } from '../table/columns.tsx';
import { CAR_AXES } from '../kit/vectors.ts';
import { COMES_TO, originChoices, originOf } from './choices.ts';
import { placeColumns, type NodeChoices, type Of } from './placeColumns.tsx';
import { amountOf, byOtherAxis, withAmount, withOrigin } from './places.ts';

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
  const { name, length, choice, trio, arrow, tube, source, number } = placeColumns(among);
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
          { header: 'is', means: 'or plus' },
          (at) => amountOf(at.until ?? NO_COORDINATE),
          (at, mm) => (at.until === undefined ? at : { ...at, until: withAmount(at.until, mm) }),
        ),
        number(
          'on',
          { least: 1, greatest: 99, step: 1 },
          { header: 'Time', means: 'from A' },
          (at) => at.nth ?? 1,
          (at, nth) => (at.until === undefined ? at : { ...at, nth }),
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
            { header, means: 'or plus' },
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
        number(
          'between',
          { least: -10, greatest: 10, step: 0.01 },
          { header: 'Part', means: '0 to 1' },
          (at) => at.fraction,
          (at, fraction) => ({ ...at, fraction }),
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

const LINED_UP = (['x', 'y', 'z'] as const).map((axis, i) => ({ axis, header: CAR_AXES[i]!.header }));

/** Of places on a tube that are given by no coordinate; they have no row in that table. */
const NO_COORDINATE: Coordinate = { value: 0 };

const withClear = (at: Of<'point'>, change: Partial<Clear>): Place =>
  at.clear === undefined ? at : { ...at, clear: { ...at.clear, ...change } };
