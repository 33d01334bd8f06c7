/** Everything that is drawn in the bay, from the store; the labels over it stand in LabelLayer. */
import { lazy, Suspense, useEffect, useMemo, type RefObject } from 'react';
import { useThree } from '@react-three/fiber';
import { standsOf } from '../../core/feet/stand.ts';
import type { TubeRef } from '../../core/job/reference.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { Selection } from '../../store/types.ts';
import { useDocument, useEditor, useResults } from '../../store/page.ts';
import { chosenTubes } from './chosen.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import type { PlaceLabels } from '../labels/LabelLayer.tsx';
import { bendRings } from '../meshes/rings.ts';
import type { Palette } from '../canvas/palette.ts';
import { extentOf } from '../canvas/extent.ts';
import type { DrawnApart } from '../scene/apart.ts';
import { EnvelopeBox } from '../scene/EnvelopeBox.tsx';
import { Eye } from '../labels/Eye.tsx';
import type { Floor } from '../scene/floor.ts';
import { gapLines, type Gap } from '../scene/gap.ts';
import { Spots } from '../scene/Spots.tsx';
import { Strokes, strokesAlong } from '../scene/Strokes.tsx';
import { useFinishes } from '../scene/useFinishes.ts';
import { Tubes } from '../scene/Tubes.tsx';
import { bodyChains, boxesOfJob } from '../canvas/shown.ts';
import type { Spot } from '../canvas/pick.ts';

const Feet = lazy(() => import('../scene/Feet.tsx'));
const Gussets = lazy(() => import('../scene/Gussets.tsx'));
const Scans = lazy(() => import('../scene/Scans.tsx'));

interface Props {
  readonly viewpoint: Viewpoint;
  readonly placer: RefObject<PlaceLabels>;
  readonly overlay: RefObject<PlaceLabels>;
  readonly palette: Palette;
  readonly pointed: TubeRef | null;
  readonly floor: Floor;
  readonly gaps: readonly Gap[];
  readonly points: readonly Spot[];
  readonly nodes: readonly Spot[];
  readonly apart: DrawnApart | null;
}

function splitSpots(
  spots: readonly Spot[],
  selection: Selection | null,
): { rest: readonly Vec3[]; live: readonly Vec3[] } {
  const isLive = (spot: Spot): boolean => spot.selection.kind === selection?.kind && spot.selection.id === selection.id;
  return {
    rest: spots.filter((spot) => !isLive(spot)).map((spot) => spot.at),
    live: spots.filter(isLive).map((spot) => spot.at),
  };
}

const NONE: readonly never[] = [];
const IN_PLACE: DrawnApart['shifts'] = new Map();

export function Scene({ viewpoint, placer, overlay, palette, pointed, floor, gaps, points, nodes, apart }: Props) {
  const derived = useDocument((state) => state.derived);
  const findings = useResults((state) => state.findings);
  const selection = useEditor((state) => state.selection);
  const station = useEditor((state) => state.station);
  const pointedOut = useEditor((state) => state.pointedOut);
  const invalidate = useThree((state) => state.invalidate);

  const finishes = useFinishes(palette);
  useEffect(() => invalidate(), [palette, invalidate]);

  const { middle, depth } = useMemo(() => extentOf(derived.tubes), [derived.tubes]);
  const body = useMemo(() => bodyChains(derived.job).flatMap(strokesAlong), [derived.job]);
  const live = useMemo(
    () => new Set([...chosenTubes(derived, station, selection).map(({ id }) => id), ...(pointedOut?.tubes ?? [])]),
    [derived, station, selection, pointedOut],
  );
  const failed = useMemo(
    () => new Set(findings.flatMap(({ severity, tube }) => (severity === 'error' ? [tube] : []))),
    [findings],
  );
  const marked = station === 'shop' && selection?.kind === 'tube' ? derived.byId.get(selection.id) : undefined;
  const marks = useMemo(() => (marked === undefined ? NONE : bendRings(marked)), [marked]);

  const shownGaps = useMemo(
    () => gapLines(derived, station, selection, pointedOut),
    [derived, station, selection, pointedOut],
  );
  const gapColour = pointedOut?.isAmiss ? palette.oxide : palette.brass;

  const pointPlaces = useMemo(() => splitSpots(points, selection), [points, selection]);
  const nodePlaces = useMemo(() => splitSpots(nodes, selection), [nodes, selection]);
  const halo = palette['bay-ground'];

  return (
    <>
      <color attach="background" args={[halo]} />
      <Eye viewpoint={viewpoint} finishes={finishes} placer={placer} overlay={overlay} middle={middle} depth={depth} />
      <Strokes strokes={floor.grid} colour={palette.rule} width={1} opacity={0.7} />
      <Strokes strokes={floor.datum} colour={palette.dye} width={1.5} opacity={0.65} />
      <Strokes strokes={body} colour={palette['rule-strong']} width={1.75} />
      <Tubes
        tubes={derived.tubes}
        finishes={finishes}
        shifts={apart?.shifts ?? IN_PLACE}
        live={live}
        pointed={pointed}
        failed={failed}
      />
      {derived.tubes.some((tube) => standsOf(tube).length > 0) && (
        <Suspense fallback={null}>
          <Feet tubes={derived.tubes} finishes={finishes} live={live} pointed={pointed} failed={failed} />
        </Suspense>
      )}
      {derived.job.gussets.length > 0 && (
        <Suspense fallback={null}>
          <Gussets frame={derived} finishes={finishes} live={live} pointed={pointed} failed={failed} />
        </Suspense>
      )}
      {derived.job.scans.length > 0 && (
        <Suspense fallback={null}>
          <Scans derived={derived} palette={palette} />
        </Suspense>
      )}
      <Strokes strokes={marks} colour={palette.brass} width={3} />
      <Strokes strokes={shownGaps} colour={gapColour} width={2.5} onTop />
      <Spots places={shownGaps.flat()} sign="dot" colour={gapColour} halo={halo} size={12} />
      {boxesOfJob(derived.job).map(({ id, box }) => (
        <EnvelopeBox
          key={id}
          box={box}
          gap={gaps.find(({ envelope }) => envelope === id) ?? null}
          live={selection?.kind === 'envelope' && selection.id === id}
          palette={palette}
        />
      ))}
      <Spots places={pointPlaces.rest} sign="cross" colour={palette.brass} halo={halo} size={16} />
      <Spots places={pointPlaces.live} sign="cross" colour={palette.dye} halo={halo} size={24} />
      <Spots places={nodePlaces.rest} sign="dot" colour={palette.ink} halo={halo} size={14} />
      <Spots places={nodePlaces.live} sign="dot" colour={palette.dye} halo={halo} size={20} />
    </>
  );
}
