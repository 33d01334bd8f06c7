/** Whether the die bends what was asked for; the radius that would do is tried. */
import { expect, test } from 'vitest';
import { derive } from '../../../../src/core/derive.ts';
import { firstFigures } from '../../../../src/core/shape/starters/asked.ts';
import { dieTrouble } from '../../../../src/core/shape/starters/die-room.ts';
import { startCage } from '../../../../src/core/shape/starters/start-cage.ts';
import { dieTroubleInWords } from '../../../../src/core/words/starters.ts';
import { plainly, shopJob } from './cars.ts';

const bench = { main: 45, light: 38 };
const side = (bent: number, greatestAngle = 120) => {
  const shop = shopJob('mm', { ...bench, bent });
  const dies = shop.dies.map((die) => ({ ...die, greatestAngle }));
  const derivation = derive(startCage({ ...shop, dies }, plainly('side-hoops', firstFigures('mm'))));
  if (!derivation.ok) throw new Error('no frame');
  return derivation.value;
};
const bendErrors = (frame: ReturnType<typeof side>) =>
  frame.findings.filter(({ id, severity }) => severity === 'error' && id.startsWith('bend/'));

test('a radius that takes more than the roof has is refused, and the greatest that does not is named', () => {
  expect(dieTrouble(side(150).tubes)).toBe(null);
  const trouble = dieTrouble(side(420).tubes);
  if (trouble?.why !== 'radius') throw new Error('not refused');
  expect(trouble.greatest).toBeLessThan(420);
  // The cage itself stays as it is on another die: the radius that is named does, a little more does not.
  expect(bendErrors(side(trouble.greatest - 1))).toEqual([]);
  expect(bendErrors(side(trouble.greatest + 1))).not.toEqual([]);
  expect(dieTroubleInWords(trouble, 'mm')).toContain(`${Math.floor(trouble.greatest)}.0 mm CLR or less`);
  expect(dieTroubleInWords({ why: 'radius', greatest: 203.5 }, 'in')).toContain('8 in CLR');
  expect(dieTroubleInWords({ why: 'radius', greatest: -3 }, 'mm')).toContain('no die would do');
});

test('a corner beyond the die’s greatest angle is refused, with the angle', () => {
  const turns = side(150).tubes.flatMap(({ bends }) => bends.map(({ angle }) => (180 / Math.PI) * angle));
  const trouble = dieTrouble(side(150, 80).tubes);
  expect(trouble).toEqual({ why: 'angle', needed: Math.max(...turns) });
  expect(dieTroubleInWords(trouble!, 'mm')).toContain(`${Math.max(...turns).toFixed(1)}°`);
});
