/** What a rehearsal finds of a tube's swing at the bender: facts, without a sentence. */
import type { BendStep } from '../job/kinds/bent.ts';
import type { NoOrder, RoomThing, Trouble } from '../rehearse/types.ts';
import type { End, OfBend } from './types.ts';

/** What would clear the way at the bender. */
export type SwingMend =
  | { readonly kind: 'raise-bender' }
  | { readonly kind: 'clear-room'; readonly what: RoomThing }
  | { readonly kind: 'corners-apart' };

/** The plain order, with `front` in front, is barred at `bend`; `order` is free. */
export interface OrderMatters extends OfBend {
  readonly id: 'bend/order-matters';
  readonly front: End;
  readonly trouble: Trouble;
  readonly order: readonly BendStep[];
}

/** The same of a tube for which no other order is searched. */
export interface PlainOrderTouches extends OfBend {
  readonly id: 'bend/plain-order-touches';
  readonly front: End;
  readonly trouble: Trouble;
  readonly mend: SwingMend;
}

export interface NoFreeOrder extends OfBend {
  readonly id: 'bend/no-free-order';
  readonly reason: NoOrder;
  readonly mend: SwingMend;
}
