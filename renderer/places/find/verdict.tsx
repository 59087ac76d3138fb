import { useState } from 'react';
import type { InspectionResult } from '#core/job/job-document.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { findWords } from '../../language/find.ts';
import { Button, Choice, Sign } from '../../parts/index.ts';
import { stretchesBetween } from '../../session/stretches-between.ts';
import type { Piece } from '../../straight/straight-picture.ts';
import { useFind } from './find-context.ts';
import { isPlugPiece } from './look-pieces.ts';
import { type LookQuality, lookQualities } from './look-quality.ts';

const qualities = [
  { value: 'clear', label: findWords.verdict.clear },
  { value: 'half', label: findWords.verdict.half },
  { value: 'feel', label: findWords.verdict.feel },
] as const;

/** What a look at some pieces of the loom showed: three buttons, and how well one could see. */
export function Verdict({
  pieces,
  plugs = [],
  about,
}: {
  readonly pieces: readonly Piece[];
  /** Plugs parted and looked into in the same opening. */
  readonly plugs?: readonly NodeId[];
  readonly about: string;
}) {
  const { open, session, pick } = useFind();
  const [quality, setQuality] = useState<LookQuality>('clear');
  const { line } = open;
  if (!line) return null;
  const onlyPlug = plugs.length === 1 && pieces.every(isPlugPiece) ? plugs[0] : undefined;
  const enter = (result: InspectionResult): void => {
    const stretches = pieces.flatMap((piece) => stretchesBetween(line, piece.fromMm, piece.toMm));
    if (stretches.length === 0) return;
    session.add({
      type: 'inspection',
      stretches,
      ...(plugs.length > 0 ? { nodeIds: [...plugs] } : {}),
      ...(result !== 'seen-sound' && onlyPlug ? { partNodeId: onlyPlug } : {}),
      result,
      lookQuality: lookQualities[quality],
      note: '',
    });
    pick(null);
  };
  return (
    <section className="verdict" aria-label={`${findWords.verdict.label}: ${about}`}>
      <Choice label={findWords.verdict.quality} value={quality} options={qualities} onChange={setQuality} />
      <div className="verdict-buttons">
        <Button large onClick={() => enter('seen-sound')}>
          <Sign name="tick" />
          {findWords.verdict.sound}
        </Button>
        <Button large onClick={() => enter('seen-damaged-not-cause')}>
          <Sign name="notch" />
          {findWords.verdict.damaged}
        </Button>
        <Button large title={findWords.verdict.provedHint} onClick={() => enter('found')}>
          <Sign name="ring" />
          {findWords.verdict.found}
        </Button>
      </div>
    </section>
  );
}
