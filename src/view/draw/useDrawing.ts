/**
 * A tube on the way: what is drawn of it stands in the editor, what is aimed at and said here. It is an edit of the job only once it is
 * ended. What an edit takes away from under it goes with its places, and is said.
 */
import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { standsAt } from '../../core/shape/draw/ground.ts';
import { drawnTube } from '../../core/shape/draw/tube.ts';
import type { Snap } from '../../core/shape/draw/snaps.ts';
import type { Job } from '../../core/job/types.ts';
import { DRAW_TROUBLE_WORDS, placesGone } from '../../core/words/drawing.ts';
import { editor, jobDocument, useDocument, useEditor } from '../../store/page.ts';
import type { DrawnPlace, Drawing } from '../../store/types.ts';
import type { Sight } from '../canvas/sight.ts';
import { targetsOf, type Aim } from './aim.ts';
import { courseThrough, onBothSides, stockFor, type Course } from './course.ts';

/** What a person must read, and whether it is a refusal. */
export interface Said {
  readonly text: string;
  readonly refused: boolean;
}

export type DrawingHands = ReturnType<typeof useDrawing>;

const NO_PLANE =
  'There is no plane to lay a place in, seen from here: turn the view until the floor is seen, or begin on a node, a point or a tube.';

const stepsOf = (): number => jobDocument.getState().committed.history.past.length;

/** A name that no member has. */
function freshName({ members }: Job): string {
  const taken = new Set(members.map(({ name }) => name));
  let number = members.length + 1;
  while (taken.has(`Member ${number}`)) number += 1;
  return `Member ${number}`;
}

export function useDrawing(drawing: Drawing, sight: Sight) {
  const derived = useDocument((state) => state.derived);
  const job = useDocument((state) => state.job);
  const draw = useEditor((state) => state.draw);
  const [aim, setAim] = useState<Aim | null>(null);
  const [said, say] = useState<Said | null>(null);
  const refuse = useCallback((text: string) => say({ text, refused: true }), []);

  const stood = useMemo(
    () => drawing.places.map((place) => ({ place, at: standsAt(derived, place.ground) })),
    [drawing.places, derived],
  );
  const drawn = useMemo(
    () => stood.flatMap(({ place: { ground }, at }): readonly Snap[] => (at === null ? [] : [{ ground, at }])),
    [stood],
  );
  const gone = stood.length - drawn.length;
  useEffect(() => {
    if (gone === 0) return;
    draw({ ...drawing, places: stillThere(stood), lost: gone });
  }, [gone, draw, drawing, stood]);

  const targets = useMemo(() => targetsOf(derived, sight, drawn), [derived, sight, drawn]);
  const places = useMemo(() => drawn.map(({ at }) => at), [drawn]);
  const stock = useMemo(() => stockFor(job, drawing), [job, drawing]);

  const through = (next: Vec3 | null): Course => {
    const all = next === null ? places : [...places, next];
    return courseThrough(stock, all, onBothSides(drawing, all));
  };

  /** Puts the next place; false, and said in words, where the tube cannot go there. */
  const put = (next: Snap | null): boolean => {
    if (next === null) {
      refuse(NO_PLANE);
      return false;
    }
    const { trouble } = through(next.at);
    if (trouble !== null) {
      refuse(DRAW_TROUBLE_WORDS[trouble]);
      return false;
    }
    say(null);
    draw({ ...drawing, places: [...drawing.places, { ground: next.ground, steps: stepsOf() }], lost: 0 });
    return true;
  };

  /** The last place, or at last the tool. */
  const takeBack = (): void => {
    say(null);
    draw(drawing.places.length === 0 ? null : { ...drawing, places: drawing.places.slice(0, -1), lost: 0 });
  };

  const end = (): void => {
    const grounds = drawing.places.map(({ ground }) => ground);
    const drawTo = (before: Job) => {
      const { job: stocked, section } = stockFor(before, drawing);
      return drawnTube(stocked, derived, grounds, { name, section, mirror: onBothSides(drawing, places) });
    };
    const name = freshName(job);
    const tried = drawTo(job);
    if (typeof tried === 'string') return refuse(DRAW_TROUBLE_WORDS[tried]);
    const [fault] = jobDocument.getState().edit(`Draw ${name}`, (before) => {
      const made = drawTo(before);
      return typeof made === 'string' ? before : made;
    });
    if (fault !== undefined) return refuse(`${fault.message}.`);
    draw(null);
    const made = jobDocument.getState().job.members.at(-1);
    if (made !== undefined) editor.getState().select({ kind: 'tube', id: made.id });
  };

  return {
    derived,
    job,
    drawing,
    drawn,
    places,
    targets,
    stock,
    bothSides: onBothSides(drawing, places),
    aim,
    setAim,
    said: said ?? (drawing.lost === 0 ? null : { text: placesGone(drawing.lost), refused: true }),
    refuse,
    through,
    put,
    takeBack,
    end,
    change: (fields: Partial<Drawing>) => draw({ ...drawing, ...fields }),
    giveUp: () => draw(null),
    /** Whether undo means the last place: nothing has been done in the job since it was put. */
    undoIsMine: () => drawing.places.length > 0 && stepsOf() <= drawing.places.at(-1)!.steps,
  };
}

/** Two neighbours that were parted by a place that is gone, and stand at one, are one. */
const stillThere = (
  stood: readonly { readonly place: DrawnPlace; readonly at: Vec3 | null }[],
): readonly DrawnPlace[] =>
  stood
    .filter(({ at }) => at !== null)
    .filter(({ at }, i, all) => i === 0 || at!.some((each, axis) => each !== all[i - 1]!.at![axis]))
    .map(({ place }) => place);
