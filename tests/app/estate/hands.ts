import type { DetailsHand } from '../details-hand.ts';
import type { QuickHand } from '../quick-hand.ts';

/** Both hands of whoever draws: one on the board, one in the details beside it. */
export interface Hands {
  readonly hand: QuickHand;
  readonly details: DetailsHand;
}
