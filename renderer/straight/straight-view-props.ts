import type { Ranking, StretchProbability } from '#core/job/ranking.ts';
import type { LengthSystem } from '../language/say-length.ts';
import type { Piece, StraightPicture } from './straight-picture.ts';

/** What one reading alone says of the place. */
export interface EvidenceBar {
  readonly key: string;
  /** Short, such as its number in the ledger. */
  readonly label: string;
  /** The reading in words. */
  readonly name: string;
  /** None: it says nothing of the place. */
  readonly pieces: readonly Piece[];
  /** It cannot hold together with another. */
  readonly doubtful: boolean;
}

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
  readonly evidence: readonly EvidenceBar[];
  /** Key of the evidence pointed at. */
  readonly pointedEvidence: string | null;
  readonly onPointEvidence: (bar: EvidenceBar) => void;
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
