/**
 * Drawing a tube in the bay, from place to place: by mouse, press by press or from press to release; by finger, whose cross stands off it; by
 * Tab from one named place near to the next, and arrow keys in steps; and by numbers, typed at any moment.
 */
import { useEffect, useLayoutEffect, useRef, useState, type RefObject } from 'react';
import { legTo } from '../../core/shape/draw/leg.ts';
import type { Snap } from '../../core/shape/draw/snaps.ts';
import { DRAW_TROUBLE_WORDS, groundName, legInWords } from '../../core/words/drawing.ts';
import { useEditor } from '../../store/page.ts';
import type { Drawing } from '../../store/types.ts';
import type { Viewpoint } from '../camera/viewpoint.ts';
import type { Hold } from '../canvas/hands.ts';
import type { Sight } from '../canvas/sight.ts';
import { stepOf } from '../gizmo/snap.ts';
import { isLaidOver, isTyping } from '../canvas/taken.ts';
import type { PlaceLabels } from '../labels/LabelLayer.tsx';
import { aimAt } from './aim.ts';
import { Beside } from './Beside.tsx';
import { guidesOf, Lines } from './Lines.tsx';
import { NoDrawing } from './NoDrawing.tsx';
import { nextStep, Strip } from './Strip.tsx';
import type { Tool } from './tool.ts';
import { beginsNumber, NOTHING_TYPED, placeTyped, snapTyped, type TypedTexts } from './typed.ts';
import { NO_PLANE, useDrawing } from './useDrawing.ts';
import { isStep, placesNear, stepped } from './walk.ts';
import './draw.css';

/** What a hold that goes on asks of what was drawn last. */
interface Latest extends Tool {
  readonly put: (next: Snap | null) => boolean;
  readonly aimed: (x: number, y: number, reach: number) => Snap | null;
  readonly isTyped: boolean;
}

interface BayParts {
  readonly viewpoint: Viewpoint;
  readonly stage: RefObject<HTMLElement | null>;
  readonly sight: Sight;
  readonly tool: RefObject<Tool | null>;
  readonly overlay: RefObject<PlaceLabels>;
  /** Told how much of the upper edge the strip covers, in pixels, as it comes and goes. */
  readonly onCover: (pixels: number) => void;
}

/** Nothing while no tube is drawn; at another station the half-drawn one waits. Without a bay, where the browser cannot draw in 3D, it says so. */
export default function Draw({ bay }: { readonly bay: BayParts | null }) {
  const drawing = useEditor((state) => state.drawing);
  const isFrame = useEditor((state) => state.station === 'frame' && state.starting === null);
  if (bay === null) return <NoDrawing />;
  return drawing !== null && isFrame ? <Drawn {...bay} drawing={drawing} /> : null;
}

/** Pixels by which the cross stands above a finger. */
const STAND_OFF = 60;
/** A finger may miss by more than this. */
const MOUSE = 8;
/** ms for which an aim must stand still before it is spoken. */
const SETTLED = 500;

function Drawn({ viewpoint, stage, sight, tool, overlay, onCover, drawing }: BayParts & { readonly drawing: Drawing }) {
  const hands = useDrawing(drawing, sight);
  const { derived, job, places, targets, aim, setAim, refuse, put } = hands;
  const beside = useRef<HTMLDivElement>(null);
  const [byKey, setByKey] = useState(false);
  const [tab, setTab] = useState<{ readonly near: readonly Snap[]; readonly nth: number } | null>(null);
  const [finger, setFinger] = useState<{ readonly x: number; readonly y: number } | null>(null);
  const [typed, setTyped] = useState<TypedTexts | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const held = useRef<(() => void) | null>(null);
  const last = hands.drawn.at(-1);
  const unit = job.lengthUnit;

  const reckoned = typed === null || last === undefined ? null : placeTyped(typed, unit, last.at, aim?.at ?? null);
  const shown: Snap | null = reckoned !== null && 'at' in reckoned ? snapTyped(reckoned.at, typed!, last!, aim) : aim;
  // Where the pointer stands still on the place that it has just put, the tube ends there.
  const isHere = last !== undefined && shown !== null && shown.at.every((each, axis) => each === last.at[axis]);
  const tabbed = tab !== null && aim === tab.near[tab.nth] && !isHere ? tab : null;
  const course = hands.through(isHere ? null : shown);
  const leg = shown === null ? null : legTo(derived, places, shown.at, shown.ground);
  const name = shown === null ? '' : typed === null ? groundName(derived, shown.ground, hands.grounds) : 'By numbers';
  const spoken = useSettled(
    shown === null
      ? `${nextStep(drawing)} ${BY_KEYS}`
      : [
          name,
          ...(leg === null ? [] : [legInWords(derived, leg)]),
          ...(tabbed === null ? [] : [`${tabbed.nth + 1} of ${tabbed.near.length} near`]),
        ].join(': '),
  );

  const at = (x: number, y: number, reach: number): Snap | null =>
    aimAt(targets, viewpoint.projection(), { x, y, reach }, stepOf(unit, false));
  const fromMiddle = (): Snap | null => {
    const { width, height } = viewpoint.projection();
    return at(width / 2, height / 2, 0);
  };
  const aimBy = (next: Snap | null): Snap | null => {
    setByKey(false);
    setAim(next);
    return next;
  };
  const aimByKey = (next: Snap): void => {
    setByKey(true);
    setAim(next);
  };
  /** The named places near where Tab was first pressed, nearest first; false after the last of them, where Tab leads on out of the bay. */
  const tabTo = (by: 1 | -1): boolean => {
    const near = tabbed?.near ?? placesNear(targets, viewpoint.projection(), aim ?? last ?? null);
    const nth = tabbed === null ? (by === 1 ? 0 : -1) : tabbed.nth + by;
    const next = near[nth];
    if (next === undefined) return false;
    setTab({ near, nth });
    aimByKey(next);
    return true;
  };
  const stopTyping = (): void => {
    setTyped(null);
    setRefused(null);
    stage.current?.focus({ preventScroll: true });
  };
  const enterTyped = (): void => {
    if (reckoned === null) return;
    if ('why' in reckoned) return setRefused(reckoned.why);
    if (!put(shown)) return;
    setAim(shown);
    stopTyping();
  };

  const now: Latest = {
    put,
    isTyped: typed !== null,
    aimed: (x, y, reach) => aimBy(at(x, y, reach)),
    point: (x, y, reach) => void aimBy(at(x, y, reach)),
    leave: () => {
      if (typed === null && !byKey) setAim(null);
    },
    pick: (x, y, reach) => {
      const meant = aimBy(at(x, y, reach));
      if (typed === null) put(meant);
      else if (reach <= MOUSE) enterTyped();
    },
    takeHold: (x, y, reach) => {
      if (reach > MOUSE) return holding(fingerHold(x, y, reach));
      if (typed !== null) return null;
      const from = at(x, y, reach);
      return from === null || from.ground.kind === 'space' ? null : holding(mouseHold(x, y, reach));
    },
    onKey: (key, shift) => {
      // A finger on the picture has taken the focus from the fields.
      if (typed !== null && key.length === 1) {
        beside.current?.querySelector('input')?.focus();
        setTyped({ ...typed, length: typed.length + key });
        return true;
      }
      if (beginsNumber(key)) {
        if (last === undefined) refuse(FIRST_PLACE);
        else setTyped({ ...NOTHING_TYPED, length: key });
        return true;
      }
      if (key === 'Tab') return typed === null && tabTo(shift ? -1 : 1);
      if (isStep(key)) {
        const from = aim ?? last ?? fromMiddle();
        if (from === null) refuse(NO_PLANE);
        else aimByKey(stepped(targets, from, key, unit, shift));
        return true;
      }
      if (key !== 'Enter') return false;
      if (typed !== null) enterTyped();
      else if (byKey && aim !== null && !isHere) put(aim);
      else hands.end();
      return true;
    },
  };
  const latest = useRef(now);
  useLayoutEffect(() => {
    latest.current = now;
    tool.current = now;
  });
  useEffect(() => {
    stage.current?.focus({ preventScroll: true });
    return () => {
      tool.current = null;
      held.current?.(); // at another station no place is put
    };
  }, [tool, stage]);

  /** Escape lets go of what is held: where it is put down then, no place is put. */
  function holding(hold: Omit<Hold, 'cancel'>): Hold {
    let isMine = true;
    const drop = (): void => {
      isMine = false;
      held.current = null;
      setFinger(null);
      setAim(null);
    };
    held.current = drop;
    return {
      move: (x, y, fine) => {
        if (isMine) hold.move(x, y, fine);
      },
      drop: () => {
        held.current = null;
        if (isMine) hold.drop();
      },
      cancel: drop,
    };
  }

  /** The tube begins at the press where it has no place yet, and goes on to where it is let go. */
  function mouseHold(x: number, y: number, reach: number): Omit<Hold, 'cancel'> {
    const begins = places.length === 0;
    const from = at(x, y, reach);
    let begun = false;
    let to: Snap | null = null;
    return {
      move: (toX, toY) => {
        if (!begun && begins) latest.current.put(from);
        begun = true;
        to = latest.current.aimed(toX, toY, reach);
      },
      drop: () => {
        if (begun) latest.current.put(to);
        else latest.current.pick(x, y, reach);
      },
    };
  }

  /** A finger that moves aims by the cross above it, and lifted puts the place, or has only pointed the way for numbers; one that taps means the place under it. */
  function fingerHold(x: number, y: number, reach: number): Omit<Hold, 'cancel'> {
    let to: Snap | null = null;
    let moved = false;
    return {
      move: (toX, toY) => {
        moved = true;
        setFinger({ x: toX, y: toY - STAND_OFF });
        to = latest.current.aimed(toX, toY - STAND_OFF, reach / 2);
      },
      drop: () => {
        setFinger(null);
        if (!moved) latest.current.pick(x, y, reach);
        else if (!latest.current.isTyped) latest.current.put(to);
      },
    };
  }

  useWayOut(hands, typed === null ? null : stopTyping, held, stage);
  useKeysOf(stage, (key) => now.onKey(key, false));

  return (
    <>
      {(shown !== null || typed !== null) && (
        <Beside
          element={beside}
          frame={derived}
          unit={unit}
          name={name}
          place={shown?.at ?? null}
          leg={leg}
          typed={typed}
          off={course.trouble === null ? null : DRAW_TROUBLE_WORDS[course.trouble]}
          refused={refused}
          onType={(texts) => {
            setRefused(null);
            setTyped(texts);
          }}
          onEnter={enterTyped}
        />
      )}
      <Lines
        viewpoint={viewpoint}
        overlay={overlay}
        course={course}
        places={places}
        aim={shown}
        guides={shown === null ? [] : guidesOf(derived, shown, last ?? null)}
        lately={hands.lately}
        finger={finger}
        byKey={byKey}
        beside={beside}
      />
      <Strip hands={hands} onNumbers={() => setTyped(NOTHING_TYPED)} onCover={onCover} />
      <p className="bay-spoken" aria-live="polite">
        {spoken}
      </p>
    </>
  );
}

const BY_KEYS =
  'Tab leads to the named places near, the nearest first, and after the last to the keys of the tool; arrow and page keys go in steps, with Shift in fine ones, and with Alt the arrows turn the view; Enter puts the place.';
const FIRST_PLACE = 'A number is the length of a leg: put the first place before.';

/** The words once they have stood for a moment: a pointer on its way would have all it passes spoken. */
function useSettled(words: string): string {
  const [settled, settle] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => settle(words), SETTLED);
    return () => clearTimeout(timer);
  }, [words]);
  return settled;
}

/**
 * A number may be typed wherever the focus stands about the bay: one who has looked from elsewhere pressed a key of the views. And a pointer
 * that presses such a key leaves the focus on the picture, so that Enter there does not press that key once more.
 */
function useKeysOf(stage: RefObject<HTMLElement | null>, type: (key: string) => boolean): void {
  const latest = useRef(type);
  useLayoutEffect(() => {
    latest.current = type;
  });
  useEffect(() => {
    const bay = stage.current?.closest('.bay');
    const isAbout = (target: EventTarget | null): target is Element =>
      target instanceof Element && (target === document.body || bay?.contains(target) === true);
    const onKey = (event: KeyboardEvent): void => {
      const { target, key } = event;
      if (event.ctrlKey || event.metaKey || event.altKey || !beginsNumber(key)) return;
      if (!isAbout(target) || stage.current?.contains(target) || isTyping(target) || isLaidOver()) return;
      if (!latest.current(key)) return;
      event.preventDefault();
      event.stopPropagation();
    };
    const onPress = (event: Event): void => {
      if (!(event.target instanceof Element) || event.target.closest('button') === null) return;
      event.preventDefault();
      stage.current?.focus({ preventScroll: true });
    };
    window.addEventListener('keydown', onKey, { capture: true });
    bay?.addEventListener('mousedown', onPress);
    return () => {
      window.removeEventListener('keydown', onKey, { capture: true });
      bay?.removeEventListener('mousedown', onPress);
    };
  }, [stage]);
}

/** Escape takes back one step: the hold under way, what is typed, the last place, the tool. A double click ends the tube. */
function useWayOut(
  hands: ReturnType<typeof useDrawing>,
  stopTyping: (() => void) | null,
  held: RefObject<(() => void) | null>,
  stage: RefObject<HTMLElement | null>,
): void {
  const answer = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || isLaidOver()) return;
    if (held.current !== null) held.current();
    else if (stopTyping !== null) stopTyping();
    else if (isTyping(event.target)) return;
    else hands.takeBack();
    event.preventDefault();
    event.stopPropagation();
  };
  const latest = useRef({ answer, end: hands.end });
  useLayoutEffect(() => {
    latest.current = { answer, end: hands.end };
  });
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => latest.current.answer(event);
    const onDouble = (): void => latest.current.end();
    const element = stage.current;
    window.addEventListener('keydown', onKey, { capture: true });
    element?.addEventListener('dblclick', onDouble);
    return () => {
      window.removeEventListener('keydown', onKey, { capture: true });
      element?.removeEventListener('dblclick', onDouble);
    };
  }, [stage]);
}
