import type { Ranking, StretchProbability } from '#core/job/ranking.ts';
import type { LengthSystem } from '../language/say-length.ts';
import type { Piece, StraightPicture } from './straight-picture.ts';

/** What the laid-straight view shows and tells. */
export interface StraightViewProps {
  readonly picture: StraightPicture;
  readonly ranking: Ranking | null;
  /** Where each opening's rank numeral stands. */
  readonly ranks: readonly {
    readonly rank: number;
    readonly stationMm: number;
    /** Drawn in full; the others quiet, where there is room. */
    readonly worthShowing: boolean;
  }[];
  readonly pointed: readonly Piece[];
  readonly picked: Piece | null;
  readonly foundMm: number | null;
  readonly lengths: LengthSystem;
  /** Names as the user wants sides said. */
  readonly say: (name: string) => string;
  /** A stretch in words, for reading aloud. */
  readonly sayStretch: (piece: Piece) => string;
  readonly onPoint: (stretch: StretchProbability | null) => void;
  readonly onPick: (stretch: StretchProbability) => void;
}
