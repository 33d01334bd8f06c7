/** Moving the eye by name: fits, standard views, keys, and the places that the rest of the program asks to see. */
import { FIT_ALL, FIT_CHOSEN } from './fits.ts';
import { useEffect, useRef } from 'react';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { useDocument, useEditor } from '../../store/page.ts';
import { moveByKey } from '../camera/move-by-key.ts';
import { fitPoints, type FitArea, type Rig } from '../camera/rig.ts';
import { hoopOf, hoopView, standardView, type StandardView } from '../camera/standard-views.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import { placesOfFrame, placesOfJob, placesOfSelection } from './extent.ts';
import { chosenMiddle } from './turns-about.ts';
import type { Size } from './useSize.ts';
import type { ViewButton } from './Toolbar.tsx';

/** A node is fitted with as much round it as shows what meets there, mm. */
const NODE_SPAN = 550;
/** A place that was asked for is shown with about this much round it, mm. */
const CLOSE_SPAN = 900;
/** Pixels along the lower edge that the toolbar takes. */
export const TOOLBAR = 60;
/** Pixels: a bay less wide than this has no room for what stands round. */
export const NARROW = 560;

export interface Views {
  /** The middle of what is chosen, which the view turns about; null where that is out of the bay. */
  readonly about: () => Vec3 | null;
  readonly groups: readonly (readonly ViewButton[])[];
  /** Acts on a key; false when it means nothing to the views. */
  readonly onKey: (key: string, shift: boolean) => boolean;
}

/** `above`: pixels of the upper edge that are covered for a while; what is fitted keeps clear of them. */
export function useViews(viewpoint: Viewpoint, size: Size, above = 0): Views {
  const derived = useDocument((state) => state.derived);
  const selection = useEditor((state) => state.selection);
  const lookAt = useEditor((state) => state.lookAt);
  const opened = useDocument((state) => state.opened);
  const wholeAsked = useEditor((state) => state.wholeAsked);
  /** The last rig that was fitted to the whole job: while nobody has moved it, it follows the bay's size. */
  const fitted = useRef<Rig | null>(null);

  const selectedPlaces = placesOfSelection(derived, selection);
  // In a narrow bay the car would make the frame too small to read: there the frame alone is fitted.
  const about = (): Vec3 | null => chosenMiddle(selectedPlaces, viewpoint.projection());
  const placesToFit = (): readonly Vec3[] =>
    viewpoint.size().width < NARROW && derived.tubes.length > 0 ? placesOfFrame(derived) : placesOfJob(derived);
  const bay = (): FitArea => ({ ...viewpoint.size(), below: TOOLBAR, above });
  const fittedTo = (rig: Rig): Rig => fitPoints(rig, placesToFit(), bay());
  const fitAll = (rig: Rig, show: (rig: Rig) => void): void => {
    fitted.current = fittedTo(rig);
    show(fitted.current);
  };
  const fit = (): void => fitAll(viewpoint.goal(), viewpoint.glide);
  const fitSelection = (): void => viewpoint.glide(fitPoints(viewpoint.goal(), selectedPlaces, bay(), NODE_SPAN));
  const turnTo = (view: StandardView) => (): void =>
    fitAll(standardView(view, viewpoint.goal(), viewpoint.size()), viewpoint.glide);
  const hoop = hoopOf(derived.tubes, selection?.kind === 'tube' ? derived.byId.get(selection.id) : undefined);
  const squareToHoop = (): void => {
    if (hoop !== undefined) fitAll(hoopView(hoop, viewpoint.goal()), viewpoint.glide);
  };

  const groups: ViewButton[][] = [
    [
      { name: 'Fit', says: FIT_ALL, key: 'F', act: fit },
      {
        name: 'Selected',
        says: FIT_CHOSEN,
        key: 'S',
        act: fitSelection,
        disabled: selectedPlaces.length === 0,
      },
    ],
    [
      { name: '3/4', says: 'Three-quarter view', key: '1', act: turnTo('three-quarter') },
      { name: 'Top', says: 'Top view', key: '2', act: turnTo('top') },
      { name: 'Left', says: 'Left side view', key: '3', act: turnTo('left') },
      { name: 'Right', says: 'Right side view', key: '4', act: turnTo('right') },
      { name: 'Front', says: 'Front view', key: '5', act: turnTo('front') },
      { name: 'Rear', says: 'Rear view', key: '6', act: turnTo('rear') },
      { name: 'Hoop', says: 'Square to the hoop’s plane', key: '7', act: squareToHoop, disabled: hoop === undefined },
    ],
  ];

  const onKey = (key: string, shift: boolean): boolean => {
    const button = groups.flat().find((candidate) => candidate.key === key.toUpperCase());
    if (button === undefined) return moveByKey(viewpoint, key, shift, about() ?? undefined);
    if (button.disabled !== true) button.act();
    return true;
  };

  const latest = useRef({ fitAll });
  useEffect(() => {
    latest.current = { fitAll };
  });
  // A job just opened, or brought back, is shown whole; so is the first tube of an empty one.
  const whole = `${opened} ${wholeAsked} ${derived.tubes.length === 0 ? 'empty' : 'framed'}`;
  const shown = useRef('');
  useEffect(() => {
    if (shown.current === whole) return;
    shown.current = whole;
    latest.current.fitAll(viewpoint.goal(), viewpoint.set);
  }, [viewpoint, whole]);

  useEffect(() => {
    const untouched = fitted.current === viewpoint.goal();
    viewpoint.resize(size.width, size.height);
    if (untouched) latest.current.fitAll(viewpoint.goal(), viewpoint.set);
  }, [viewpoint, size]);

  // It is not fitted anew once they are clear again: a picture that moves twice is worse than one that stands low.
  useEffect(() => {
    if (above === 0 || fitted.current !== viewpoint.goal()) return;
    latest.current.fitAll(viewpoint.goal(), viewpoint.glide);
  }, [viewpoint, above]);

  useEffect(() => {
    if (lookAt === null) return;
    const goal = viewpoint.goal();
    viewpoint.glide({ ...goal, target: lookAt.at, span: Math.min(goal.span, CLOSE_SPAN) });
  }, [viewpoint, lookAt]);

  return { about, groups, onKey };
}
