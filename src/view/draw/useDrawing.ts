/**
 * A tube on the way: what is drawn of it stands in the editor, what is aimed at and said here. It is an edit of the job only once it is
 * ended. What an edit takes away from under it goes with its places, and is said.
 */
import { useEffect, useMemo, useState } from 'react';
import { standsAt, stillThere, type Ground } from '../../core/shape/draw/ground.ts';
import type { Derived } from '../../core/derive.ts';
import { drawnTube } from '../../core/shape/draw/tube.ts';
import type { Snap } from '../../core/shape/draw/snaps.ts';
import type { Job } from '../../core/job/types.ts';
import { ownSteps } from '../../core/session/history.ts';
import { DRAW_TROUBLE_WORDS, placesGone } from '../../core/words/drawing.ts';
import { editor, jobDocument, useDocument, useEditor } from '../../store/page.ts';
import type { Drawing } from '../../store/types.ts';
import type { Sight } from '../canvas/sight.ts';
import { isOwner, targetsOf } from './aim.ts';
import { courseThrough, onBothSides, stockFor, type Course } from './course.ts';

export type DrawingHands = ReturnType<typeof useDrawing>;

export const NO_PLANE =
  'There is no plane to lay a place in, seen from here: turn the view until the floor is seen, or begin on a node, a point or a tube.';

const stepsOf = (): number => ownSteps(jobDocument.getState().committed.history);

/** A name that no member has; the first without a number, which would be taken for that of the tube. */
function freshName({ members }: Job): string {
  const taken = new Set(members.map(({ name }) => name));
  const first = 'Drawn tube';
  if (!taken.has(first)) return first;
  let nth = 2;
  while (taken.has(`${first} (${nth})`)) nth += 1;
  return `${first} (${nth})`;
}

export function useDrawing(drawing: Drawing, sight: Sight) {
  const derived = useDocument((state) => state.derived);
  const job = useDocument((state) => state.job);
  const draw = useEditor((state) => state.draw);
  const [aim, setAim] = useState<Snap | null>(null);
  // A refusal stands until another place is put, or one taken back.
  const [said, say] = useState<{ readonly text: string; readonly of: Drawing['places'] } | null>(null);
  const refuse = (text: string): void => say({ text, of: drawing.places });

  const drawn = useMemo(
    () => stillThere(derived, drawing.places).map(({ ground }): Snap => ({ ground, at: standsAt(derived, ground)! })),
    [derived, drawing.places],
  );
  const gone = drawing.places.length - drawn.length;
  useEffect(() => {
    if (gone === 0) return;
    draw({ ...drawing, places: stillThere(derived, drawing.places), lost: gone });
  }, [gone, draw, drawing, derived]);

  const lately = useLately(derived, drawn, aim);
  const targets = useMemo(() => targetsOf(derived, sight, drawn, lately), [derived, sight, drawn, lately]);
  const places = useMemo(() => drawn.map(({ at }) => at), [drawn]);
  const stock = useMemo(() => stockFor(job, drawing), [job, drawing]);

  const through = (next: Snap | null): Course => {
    const all = next === null ? drawn : [...drawn, next];
    const ats = all.map(({ at }) => at);
    return courseThrough(stock, ats, onBothSides(derived, drawing, all));
  };

  /** Puts the next place; false, and said in words, where the tube cannot go there. */
  const put = (next: Snap | null): boolean => {
    if (next === null) {
      refuse(NO_PLANE);
      return false;
    }
    const { trouble } = through(next);
    if (trouble !== null) {
      refuse(DRAW_TROUBLE_WORDS[trouble]);
      return false;
    }
    draw({ ...drawing, places: [...drawing.places, { ground: next.ground, steps: stepsOf() }], lost: 0 });
    return true;
  };

  /** The last place, or at last the tool. */
  const takeBack = (): void => {
    draw(drawing.places.length === 0 ? null : { ...drawing, places: drawing.places.slice(0, -1), lost: 0 });
  };

  const end = (): void => {
    const grounds = drawing.places.map(({ ground }) => ground);
    const drawTo = (before: Job) => {
      const { job: stocked, section } = stockFor(before, drawing);
      return drawnTube(stocked, derived, grounds, { name, section, mirror: onBothSides(derived, drawing, drawn) });
    };
    const name = freshName(job);
    const tried = drawTo(job);
    if (typeof tried === 'string') return refuse(DRAW_TROUBLE_WORDS[tried]);
    const [fault] = jobDocument.getState().edit('Draw a tube', (before) => {
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
    grounds: drawn.map(({ ground }) => ground),
    targets,
    lately,
    stock,
    bothSides: onBothSides(derived, drawing, drawn),
    aim,
    setAim,
    refused: said?.of === drawing.places ? said.text : drawing.lost > 0 ? placesGone(drawing.lost) : null,
    refuse,
    through,
    put,
    takeBack,
    end,
    change: (fields: Partial<Drawing>) => draw({ ...drawing, ...fields }),
    giveUp: () => draw(null),
  };
}

/** ms for which the aim must rest on a place to line up with it, and how many such places are kept. */
const RESTED = 250;
const MOST_LATELY = 2;

/** What the aim last rested on, of what other places can be in line with; the latest first. */
function useLately(frame: Derived, drawn: readonly Snap[], aim: Snap | null): readonly Snap[] {
  const [grounds, setGrounds] = useState<readonly Ground[]>([]);
  useEffect(() => {
    if (aim === null || aim.ground === drawn.at(-1)?.ground || !isOwner({ drawn }, aim.ground)) return;
    const add = (before: readonly Ground[]): readonly Ground[] =>
      before[0] === aim.ground
        ? before
        : [aim.ground, ...before.filter((ground) => ground !== aim.ground)].slice(0, MOST_LATELY);
    const timer = setTimeout(() => setGrounds(add), RESTED);
    return () => clearTimeout(timer);
  }, [aim, drawn]);
  return useMemo(
    () =>
      grounds.flatMap((ground): readonly Snap[] => {
        // A place of the tube that was taken back is a place no longer.
        const at = isOwner({ drawn }, ground) ? standsAt(frame, ground) : null;
        return at === null ? [] : [{ ground, at }];
      }),
    [frame, drawn, grounds],
  );
}
