import { type ReactNode, useState } from 'react';
import { drawWords } from '../../../language/draw.ts';
import { countWords, severalWords, type ThingKind } from '../../../language/draw-several.ts';
import { Disclosure } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { SeveralCircuits } from './several-circuits.tsx';
import { SeveralNodes } from './several-nodes.tsx';
import { SeveralPanels } from './several-panels.tsx';
import { SeveralRubSpots } from './several-rub-spots.tsx';
import { SeveralRuns } from './several-runs.tsx';
import { SeveralClips, SeveralOutlines, SeveralPictures } from './several-small.tsx';
import { thingsByKind } from './things-by-kind.ts';

/** Several picked things: the fields those of one kind have in common, changed on all of them at once. */
export function SeveralForm({ ids }: { readonly ids: readonly string[] }) {
  const { map } = useDraw();
  const things = thingsByKind(map, ids);
  const parts = (
    [
      ['segment', <SeveralRuns key="segment" runs={things.segment} />],
      ['node', <SeveralNodes key="node" nodes={things.node} />],
      ['panel', <SeveralPanels key="panel" panels={things.panel} />],
      ['rub-spot', <SeveralRubSpots key="rub-spot" spots={things['rub-spot']} />],
      ['circuit', <SeveralCircuits key="circuit" circuits={things.circuit} />],
      ['clip', <SeveralClips key="clip" clips={things.clip} />],
      ['outline', <SeveralOutlines key="outline" outlines={things.outline} />],
      ['underlay', <SeveralPictures key="underlay" pictures={things.underlay} />],
    ] as const
  ).filter(([kind]) => things[kind].length > 0);
  const [only] = parts;
  if (parts.length === 1 && only) {
    const name = countWords[only[0]](ids.length);
    return (
      <section className="form" aria-label={name}>
        <h2>{name}</h2>
        <p className="quiet">{severalWords.lead}</p>
        {only[1]}
      </section>
    );
  }
  return (
    <section className="form" aria-label={drawWords.severalPicked(ids.length)}>
      <h2>{drawWords.severalPicked(ids.length)}</h2>
      <p className="quiet">{severalWords.lead}</p>
      {parts.map(([kind, fields]) => (
        <KindPart key={kind} kind={kind} count={things[kind].length}>
          {fields}
        </KindPart>
      ))}
    </section>
  );
}

/** One kind among several, folded away until wanted. */
function KindPart({
  kind,
  count,
  children,
}: {
  readonly kind: ThingKind;
  readonly count: number;
  readonly children: ReactNode;
}) {
  const [open, setOpen] = useState(false);
  return (
    <Disclosure label={countWords[kind](count)} open={open} onToggle={setOpen}>
      <div className="form">{children}</div>
    </Disclosure>
  );
}
