/** The bay: the frame in 3D with the car and the driver's envelope round it, its views, and what can be taken hold of. */
import { lazy, Suspense, useCallback, useEffect, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import type { Derived } from '../../core/derive.ts';
import { standsOf } from '../../core/feet/stand.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { useDocument, useEditor, useResults } from '../../store/page.ts';
import type { Selection } from '../../store/types.ts';
import { isArrow } from '../camera/move-by-key.ts';
import { createViewpoint } from '../camera/viewpoint.ts';
import { Drawing } from '../canvas/Drawing.tsx';
import { chosenTubes } from './chosen.ts';
import { describeSelection } from './describe.ts';
import { placesOfJob } from '../canvas/extent.ts';
import type { Tool } from '../draw/tool.ts';
import { Gizmo, Readout } from '../gizmo/later.ts';
import { useGrips } from '../gizmo/useGrips.ts';
import { useHands } from '../canvas/hands.ts';
import { LabelLayer, type PlaceLabels } from '../labels/LabelLayer.tsx';
import {
  axisLabels,
  findingLabels,
  forecastLabels,
  gapLabels,
  numberLabels,
  orderLabels,
  pointedLabels,
  pointedOutLabels,
  pointLabels,
  tubeLabels,
} from '../labels/labels-of.tsx';
import { NoPicture, usePicture, type Picture } from '../canvas/NoPicture.tsx';
import { usePalette } from '../canvas/palette.ts';
import { pick } from '../canvas/pick.ts';
import { drawnApart } from '../scene/apart.ts';
import { Scene } from './Scene.tsx';
import { floorUnder, layFloor, sameSize, type Floor } from '../scene/floor.ts';
import { shortestGaps } from '../scene/gap.ts';
import { boxesOfJob, nodeSpots, pointSpots } from '../canvas/shown.ts';
import { sightOf } from '../canvas/sight.ts';
import { wallUnder } from '../canvas/turns-about.ts';
import { Toolbar } from '../canvas/Toolbar.tsx';
import { useSize } from '../canvas/useSize.ts';
import { TOOLBAR, useViews } from '../canvas/useViews.ts';
import '../canvas/bay.css';

const Draw = lazy(() => import('../draw/Draw.tsx'));
const ScanPick = lazy(() => import('./ScanPick.tsx'));

const FIRST_RIG = { target: [0, 0, 600], yaw: (38 * Math.PI) / 180, pitch: (24 * Math.PI) / 180, span: 3000 } as const;

const LOOKED_AT =
  'Frame. Arrow keys turn the view, plus and minus zoom; with a node selected, arrow and page keys move it, and Alt with an arrow turns the view. Escape clears the selection.';
const DRAWN_IN =
  'Frame, where a tube is being drawn. Alt with an arrow turns the view. Escape takes back the last place, and at last puts the tool away.';

export default function Bay() {
  const picture = usePicture();
  const isDrawing = useEditor((state) => state.drawing !== null);
  if (picture.state !== 'missing') return <DrawnBay picture={picture} />;
  return (
    <section className="bay" aria-label="3D view of the frame">
      <NoPicture picture={picture} />
      {isDrawing && (
        <Suspense>
          <Draw bay={null} />
        </Suspense>
      )}
    </section>
  );
}

function DrawnBay({ picture }: { readonly picture: Picture }) {
  const derived = useDocument((state) => state.derived);
  // Its points stand where they were measured, not where they were guessed.
  const { job } = derived;
  const findings = useResults((state) => state.findings);
  const forecast = useResults((state) => state.forecast);
  const selection = useEditor((state) => state.selection);
  const station = useEditor((state) => state.station);
  const pointedOut = useEditor((state) => state.pointedOut);
  const isDrawing = useEditor((state) => state.drawing !== null);
  const isDragged = useDocument((state) => state.gesture.state !== 'idle');
  const select = useEditor((state) => state.select);

  const palette = usePalette();
  const [viewpoint] = useState(() => createViewpoint(FIRST_RIG));
  const placer = useRef<PlaceLabels>(() => {});
  const overlay = useRef<PlaceLabels>(() => {});
  const tool = useRef<Tool | null>(null);
  const stage = useRef<HTMLDivElement>(null);
  const [pointed, setPointed] = useState<Selection | null>(null);
  const pointAt = (found: Selection | null): void =>
    setPointed((before) => (before?.kind === found?.kind && before?.id === found?.id ? before : found));
  const [numbered, setNumbered] = useState(true);
  const size = useSize(stage);
  /** Pixels of the upper edge under the drawing strip. */
  const [covered, setCovered] = useState(0);
  const views = useViews(viewpoint, size, covered);
  const grips = useGrips(viewpoint);
  const { held } = grips;

  const gaps = useMemo(() => shortestGaps(derived), [derived]);
  const points = useMemo(() => pointSpots(job, selection), [job, selection]);
  const nodes = useMemo(() => nodeSpots(derived, station, selection), [derived, station, selection]);
  const floor = useFloor(derived, job.lengthUnit);
  const sight = useMemo(() => sightOf(derived.tubes), [derived.tubes]);
  const isApart = useEditor((state) => state.apart) && station === 'frame' && selection?.kind === 'node';
  const apart = useMemo(() => (isApart ? drawnApart(derived, selection.id) : null), [isApart, derived, selection]);
  const feet = useMemo(() => derived.tubes.flatMap(standsOf), [derived.tubes]);

  const labels = useMemo(() => {
    const chosen = chosenTubes(derived, station, selection);
    return [
      ...tubeLabels(chosen),
      ...gapLabels(gaps, job.lengthUnit),
      ...pointedOutLabels(pointedOut),
      ...forecastLabels(forecast, job.lengthUnit),
      ...findingLabels(findings, station),
      ...(numbered ? numberLabels(derived.tubes, chosen) : []),
      ...pointLabels(points, job, selection, station === 'survey'),
      ...pointedLabels(derived, pointed, selection, station),
      ...orderLabels(apart),
      ...axisLabels(floor),
      ...(held?.labels ?? []),
    ];
  }, [
    derived,
    findings,
    forecast,
    job,
    selection,
    station,
    numbered,
    gaps,
    points,
    floor,
    pointed,
    pointedOut,
    apart,
    held,
  ]);

  const under = (x: number, y: number, reach: number) =>
    pick(
      { tubes: sight, spots: [...nodes, ...points], feet, envelopes: boxesOfJob(job) },
      viewpoint.projection(),
      x,
      y,
      reach,
    );
  const letGo = useHands(stage, {
    viewpoint,
    onPick: (x, y, reach) => (tool.current ? tool.current.pick(x, y, reach) : select(under(x, y, reach))),
    onPoint: (x, y, reach) => {
      if (tool.current) return tool.current.point(x, y, reach);
      pointAt(grips.point(x, y, reach) ? null : under(x, y, reach));
    },
    onLeave: () => {
      setPointed(null);
      tool.current?.leave();
    },
    takeHold: (x, y, reach) => (tool.current ?? grips).takeHold(x, y, reach),
    turnsAbout: (x, y, reach) =>
      wallUnder(sight, viewpoint.projection(), x, y, reach) ?? views.about() ?? viewpoint.rig().target,
  });

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey) return;
    // The chord that turns the view also while the bare arrows move an aim or a node.
    if (event.altKey) {
      if (!isArrow(event.key) || !views.onKey(event.key, event.shiftKey)) return;
    } else if (tool.current?.onKey(event.key, event.shiftKey)) {
      // It has acted.
    } else if (event.key === 'Escape') {
      if (!letGo.current()) select(null);
    } else if (event.key.toLowerCase() === 'n') setNumbered((on) => !on);
    else if (!grips.onKey(event.key, event.shiftKey) && !views.onKey(event.key, event.shiftKey)) return;
    event.preventDefault();
    // The bay has the focus: the page's own shortcuts must not act on the same key.
    event.stopPropagation();
  };

  const asksForFrame = useCallback(() => viewpoint.redraw(), [viewpoint]);
  useEffect(asksForFrame);

  return (
    <section className="bay" aria-label="3D view of the frame">
      <div
        className="bay-stage"
        ref={stage}
        role="application"
        tabIndex={0}
        aria-label={isDrawing ? DRAWN_IN : LOOKED_AT}
        data-pointed={pointed !== null || grips.live !== null}
        onKeyDown={onKeyDown}
      >
        <Drawing key={picture.start} size={size} picture={picture}>
          <Scene
            viewpoint={viewpoint}
            placer={placer}
            overlay={overlay}
            palette={palette}
            pointed={pointed?.kind === 'tube' ? pointed.id : null}
            floor={floor}
            gaps={gaps}
            points={points}
            nodes={nodes}
            apart={apart}
          />
          {held !== null && (
            <Suspense>
              <Gizmo
                viewpoint={viewpoint}
                place={held.freedom.place}
                grips={held.grips}
                live={grips.live}
                palette={palette}
              />
            </Suspense>
          )}
        </Drawing>
        <LabelLayer labels={labels} sight={sight} below={TOOLBAR} placerRef={placer} onWords={asksForFrame} />
      </div>
      {isDrawing && (
        <Suspense>
          <Draw bay={{ viewpoint, stage, sight, tool, overlay, onCover: setCovered }} />
        </Suspense>
      )}
      {job.scans.length > 0 && (
        <Suspense>
          <ScanPick viewpoint={viewpoint} tool={tool} />
        </Suspense>
      )}
      <NoPicture picture={picture} again={() => picture.again() && stage.current?.focus()} />
      {held !== null && !isDrawing && (
        <Suspense>
          <Readout overlay={overlay} held={held} news={grips.news} />
        </Suspense>
      )}
      <Toolbar
        groups={[
          ...views.groups,
          [{ name: '№', says: 'Member numbers', key: 'N', act: () => setNumbered((on) => !on), pressed: numbered }],
        ]}
      />
      <output className="bay-spoken">
        {!isDragged && (grips.news?.refused ?? describeSelection(derived, selection))}
      </output>
    </section>
  );
}

/** The same floor as long as it need not grow or shrink: most edits do not reach its edge. */
function useFloor(derived: Derived, unit: LengthUnit): Floor {
  const laid = useRef<Floor | null>(null);
  const size = useMemo(() => floorUnder(placesOfJob(derived), unit), [derived, unit]);
  if (laid.current === null || !sameSize(laid.current.size, size)) laid.current = layFloor(size);
  return laid.current;
}
