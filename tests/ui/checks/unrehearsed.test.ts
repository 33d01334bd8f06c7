/** What Checks says of tubes that were not rehearsed. */
import { expect, it } from 'vitest';
import { unrehearsedInWords } from '../../../src/ui/checks/Unrehearsed.tsx';

it('says how many are not rehearsed yet, how many will not be, and nothing of none', () => {
  expect(unrehearsedInWords(0, [])).toEqual([]);
  expect(unrehearsedInWords(1, [])[0]).toMatch(/^1 tube is not rehearsed at the bender yet/u);
  const failed = [
    { name: 'Hoop', why: 'no answer came' },
    { name: 'Leg', why: 'no answer came' },
  ];
  const [yet, never] = unrehearsedInWords(3, failed);
  expect(yet).toMatch(/^3 tubes are not rehearsed at the bender yet/u);
  expect(never).toMatch(/^2 tubes are not rehearsed .* fault of the program: Hoop, Leg \(no answer came\)/u);
});
