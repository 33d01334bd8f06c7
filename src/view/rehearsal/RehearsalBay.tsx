/**
 * The bay while a tube is rehearsed: the bender with the tube in it, seen with the same eye and hands as the frame. What
 * moves is set by refs; between two frames that are asked for nothing is drawn.
 */
import { useCallback, useEffect, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import type { Group } from 'three';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { dieCentre, machineOf, roomOf, sideOf } from '../../core/rehearse/machine.ts';
import type { BendableTube } from '../../core/rehearse/bendable.ts';
import type { Solid } from '../../core/rehearse/types.ts';
import { createViewpoint } from '../camera/viewpoint.ts';
import { Drawing } from '../canvas/Drawing.tsx';
import { boxOf } from '../canvas/extent.ts';
import { useHands } from '../canvas/hands.ts';
import { LabelLayer, type PlaceLabels } from '../labels/LabelLayer.tsx';
import { centrelineChain } from '../../core/mesh/sweep.ts';
import { NoPicture, usePicture, type Picture } from '../canvas/NoPicture.tsx';
import { usePalette } from '../canvas/palette.ts';
import { Eye } from '../labels/Eye.tsx';
import { floorUnder, layFloor } from '../scene/floor.ts';
import { Spots } from '../scene/Spots.tsx';
import { useFinishes } from '../scene/useFinishes.ts';
import { Strokes, strokesAlong, type Stroke } from '../scene/Strokes.tsx';
import { Toolbar } from '../canvas/Toolbar.tsx';
import { sightOf } from '../canvas/sight.ts';
import { useSize } from '../canvas/useSize.ts';
import { NARROW, TOOLBAR } from '../canvas/useViews.ts';
import { Machine } from './Machine.tsx';
import type { Player } from './player.ts';
import type { Stage } from './rehearsed.ts';
import { rehearsalLabels } from './labels.tsx';
import { solidMesh } from './solids.ts';
import type { Timeline } from './timeline.ts';
import { TubeOnMachine, type TubeEnd, type TubeEnds } from './TubeOnMachine.tsx';
import { FIRST_RIG, useMachineViews } from './useMachineViews.ts';
import '../canvas/bay.css';

interface Props {
  readonly tube: BendableTube;
  readonly unit: LengthUnit;
  readonly stages: readonly Stage[];
  readonly timeline: Timeline;
  readonly player: Player;
  /** The step that is shown: 0 = the first. */
  readonly current: number;
}

export function RehearsalBay(props: Props) {
  const picture = usePicture();
  if (picture.state !== 'missing') return <DrawnRehearsal {...props} picture={picture} />;
  return (
    <section className="bay" aria-label="3D view of the bender">
      <NoPicture picture={picture} />
    </section>
  );
}

/** The feed's line on the floor. */
const FEED: readonly Stroke[] = [
  ...strokesAlong([[-1100, 0, 1] as Vec3, [-350, 0, 1]]),
  ...strokesAlong([[-430, 45, 1] as Vec3, [-350, 0, 1], [-430, -45, 1]]),
];

const WALL_ROUND = 300;

function DrawnRehearsal({ tube, unit, stages, timeline, player, current, picture }: Props & { picture: Picture }) {
  const { die, section } = tube;
  const palette = usePalette();
  const [viewpoint] = useState(() => createViewpoint(FIRST_RIG));
  const placer = useRef<PlaceLabels>(() => {});
  const stage = useRef<HTMLDivElement>(null);
  const turning = useRef<Group>(null);
  const ends = useRef<TubeEnds>({ front: NO_END, rear: NO_END });
  const size = useSize(stage);
  const finishes = useFinishes(palette);

  const solids = useMemo(() => [...machineOf(die, section), ...roomOf(die.bender)], [die, section]);
  const swept = useMemo(() => stages.flatMap(placesOfStage), [stages]);
  const far = size.width >= NARROW;
  const places = useMemo(
    () => [...swept, ...solids.filter(({ id }) => far || id.part !== 'room').flatMap(cornersOf)],
    [swept, solids, far],
  );
  const { middle, depth } = useMemo(() => boxOf(places), [places]);
  const grid = useMemo(() => layFloor(floorUnder(places, unit)).grid, [places, unit]);
  const views = useMachineViews(viewpoint, size, places);
  useHands(stage, {
    viewpoint,
    onPick: () => {},
    onPoint: () => {},
    onLeave: () => {},
    takeHold: () => null,
    turnsAbout: () => viewpoint.rig().target,
  });

  const shown = stages[current]!;
  const hit = shown.step.hit;
  const touch = useMemo(() => (hit === null ? [] : [hit.at]), [hit]);
  const path = useMemo(() => strokesAlong(shown.swept), [shown]);
  const labels = useMemo(() => rehearsalLabels(solids, shown, ends), [solids, shown]);

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || !views.onKey(event.key, event.shiftKey)) return;
    event.preventDefault();
    event.stopPropagation();
  };
  const asksForFrame = useCallback(() => viewpoint.redraw(), [viewpoint]);
  useEffect(asksForFrame);

  return (
    <section className="bay" aria-label="3D view of the bender">
      <div
        className="bay-stage"
        ref={stage}
        role="application"
        tabIndex={0}
        aria-label="Bender with the tube. Arrow keys turn the view, plus and minus zoom. Escape goes back to the frame."
        onKeyDown={onKeyDown}
      >
        <Drawing key={picture.start} size={size} picture={picture}>
          <color attach="background" args={[palette['bay-ground']]} />
          <TubeOnMachine
            stages={stages}
            timeline={timeline}
            player={player}
            radius={section.outerDiameter / 2}
            finishes={finishes}
            turning={turning}
            axis={dieCentre(die, die.bender)}
            side={sideOf(die.bender)}
            ends={ends}
          />
          <Eye viewpoint={viewpoint} finishes={finishes} placer={placer} middle={middle} depth={depth} />
          <Strokes strokes={grid} colour={palette.rule} width={1} opacity={0.7} />
          <Strokes strokes={FEED} colour={palette.dye} width={2} opacity={0.8} />
          <Machine
            solids={solids}
            reach={depth / 2 + WALL_ROUND}
            finishes={finishes}
            palette={palette}
            turning={turning}
          />
          <Strokes strokes={path} colour={palette.brass} width={2.5} />
          <Spots places={touch} sign="cross" colour={palette.oxide} halo={palette['bay-ground']} size={30} />
        </Drawing>
        <LabelLayer labels={labels} sight={NOTHING_BEFORE} below={TOOLBAR} placerRef={placer} onWords={asksForFrame} />
      </div>
      <NoPicture picture={picture} again={() => picture.again() && stage.current?.focus()} />
      <Toolbar groups={views.groups} />
    </section>
  );
}

/** The labels stand over the machine, whatever is before them. */
const NOTHING_BEFORE = sightOf([]);
const NO_END: TubeEnd = { at: [0, 0, 0], off: [1, 0, 0] };

/** Where the tube is at both ends of a bend, and the way between. */
const placesOfStage = ({ step, poseAt, swept }: Stage): readonly Vec3[] => [
  ...[poseAt(0), poseAt(step.pulled)].flatMap(({ front, rear }) => [front, rear].flatMap(centrelineChain)),
  ...swept,
];

/** What must be in view of a solid; a wall or the floor has no end. */
function cornersOf(solid: Solid): readonly Vec3[] {
  if (solid.shape.kind === 'plane') return [];
  const { positions } = solidMesh(solid, 0);
  return Array.from({ length: positions.length / 3 }, (_, i): Vec3 => [
    positions[3 * i]!,
    positions[3 * i + 1]!,
    positions[3 * i + 2]!,
  ]);
}
