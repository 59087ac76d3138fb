import { useState } from 'react';
import type { InspectionResult } from '#core/job/job-document.ts';
import type { NodeId, PanelId } from '#core/quantity/id.ts';
import { findWords } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
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
  trim,
  about,
}: {
  readonly pieces: readonly Piece[];
  /** Plugs parted and looked into in the same opening. */
  readonly plugs?: readonly NodeId[];
  /** Panels still on that a clear view of it cannot be had with. */
  readonly trim: readonly PanelId[];
  readonly about: string;
}) {
  const { open, session, pick, say } = useFind();
  const [quality, setQuality] = useState<LookQuality>('clear');
  const { line } = open;
  if (!line) return null;
  const cameOff = quality === 'clear' ? trim : [];
  const onlyPlug = plugs.length === 1 && pieces.every(isPlugPiece) ? plugs[0] : undefined;
  const enter = (result: InspectionResult): void => {
    const stretches = pieces.flatMap((piece) => stretchesBetween(line, piece.fromMm, piece.toMm));
    if (stretches.length === 0) return;
    const nowOff = cameOff.map((panelId) => ({ type: 'panel-off', panelId }) as const);
    session.add(...nowOff, {
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
      {cameOff.length > 0 ? (
        <p className="quiet verdict-trim">
          {findWords.verdict.alsoOff(cameOff.map((id) => say(nameOf(open.map, id))).join(', '))}
        </p>
      ) : null}
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
