/** What a tube says of the one on the other side, and of a bent one that it is butted to: a person builds by it. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { primed } from '../../../src/core/job/reference.ts';
import { fitBefore } from '../../../src/core/shape/fit-before.ts';
import { isEnd, jointAt } from '../../../src/core/shape/joint-order.ts';
import { splitMember } from '../../../src/core/shape/split.ts';
import { endInWords } from '../../../src/core/words/ends.ts';
import { twinIs } from '../../../src/core/words/twins.ts';
import { again, made, read, solved } from '../shape/sides.ts';

const demo = read(readFileSync('tests/fixtures/demo-typed.cagewright.json', 'utf8'));
const frame = solved(demo);

it('tubes whose ends are cut alike on both sides are mirror images', () => {
  const pairs = frame.tubes
    .filter(({ twinOf }) => twinOf === null)
    .flatMap((tube) => {
      const twin = frame.byId.get(primed(tube.id));
      return twin === undefined ? [] : [twinIs(tube, twin)];
    });
  expect(pairs.length).toBeGreaterThan(7);
  expect(new Set(pairs)).toEqual(new Set(['Mirror image']));
});

it('a stay that is coped to the diagonal on one side alone is not the other’s mirror image', () => {
  const joint = jointAt(frame, 'stay-top').filter(isEnd);
  const [stay, diagonal] = ['stay', 'diagonal'].map((id) => joint.find(({ bar }) => bar.id === id)!);
  const after = solved(again(fitBefore(demo, frame, diagonal!, stay!)));
  const [left, right] = [after.byId.get('stay')!, after.byId.get("stay'")!];
  expect(left.ends[0].cuts.length).not.toBe(right.ends[0].cuts.length);
  expect(twinIs(left, right)).toContain('NOT the mirror image');
});

it('of two halves of a leg, split between its bends, each says how the other is turned to it: by the angle between the bends’ planes', () => {
  const leg = frame.byId.get('leg')!;
  const between = (leg.bends[1]!.rotation * 180) / Math.PI;
  expect(Math.abs(between)).toBeGreaterThan(20);
  const [first, second] = leg.straights;
  const along = first! + leg.bends[0]!.arc + second! / 2;
  const after = solved(again(made(splitMember(demo, frame, 'leg', along))));
  const halves = after.tubes.filter(({ name, twinOf }) => twinOf === null && name.startsWith('Front leg'));
  expect(halves).toHaveLength(2);
  const said = halves.flatMap(({ ends }) =>
    ends.filter(({ butted }) => butted.length > 0).map((end) => endInWords(after, end)),
  );
  expect(said.length).toBeGreaterThan(0);
  for (const words of said) expect(words).toContain(`whose 0° line comes ${Math.abs(between).toFixed(1)}° `);
});
