import { describe, expect, it } from 'vitest';
import { withLater } from '../../src/core/remembered.ts';

interface Plain {
  readonly side: number;
}

describe('withLater', () => {
  it('works out what is asked for when it is asked for, once a record', () => {
    const worked: number[] = [];
    const square = withLater<Plain, { readonly area: number }>({
      area({ side }) {
        worked.push(side);
        return side * side;
      },
    });
    const [two, three] = [square({ side: 2 }), square({ side: 3 })];
    expect(worked).toEqual([]);
    expect([three.area, three.area, two.area, three.area]).toEqual([9, 9, 4, 9]);
    expect(worked).toEqual([3, 2]);
  });

  it('is a field like any other to whoever lists, copies or compares the record', () => {
    const square = withLater<Plain, { readonly area: number }>({ area: ({ side }) => side * side });
    expect(Object.keys(square({ side: 2 }))).toEqual(['side', 'area']);
    expect({ ...square({ side: 2 }) }).toStrictEqual({ side: 2, area: 4 });
    expect(square({ side: 2 })).not.toEqual(square({ side: 3 }));
  });
});
