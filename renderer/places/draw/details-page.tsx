import type { ReactNode } from 'react';
import { idKind } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { BodyOutlines } from './body-outlines.tsx';
import { CircuitForm } from './circuit-form.tsx';
import { ClipForm } from './clip-form.tsx';
import { ThingActions } from './copy/thing-actions.tsx';
import { useDraw } from './draw-context.ts';
import { MapForm } from './map-form.tsx';
import { NodeForm } from './node-form.tsx';
import { AllPanelsOrder } from './order/panel-order.tsx';
import { OutlineForm } from './outline-form.tsx';
import { PanelForm } from './panel-form.tsx';
import { RubSpotForm } from './rub-spot-form.tsx';
import { RunForm } from './run-form.tsx';
import { SeveralForm } from './several/several-form.tsx';
import { UnderlayForm } from './underlay-form.tsx';
import { UsualPanels } from './usual-panels.tsx';

/** Everything about what is picked; with nothing picked, about the map itself. */
export function DetailsPage() {
  const { open } = useDraw();
  const { selection } = open;
  const only = selection.length === 1 ? selection[0] : undefined;
  return (
    <div className="details" data-picked={selection.join(' ')}>
      {selection.length === 0 ? <p className="quiet">{drawWords.nothingPicked}</p> : null}
      {selection.length === 0 ? <MapForm /> : null}
      {selection.length === 0 ? <BodyOutlines /> : null}
      {selection.length === 0 ? <UsualPanels /> : null}
      {selection.length === 0 ? <AllPanelsOrder /> : null}
      {selection.length > 1 ? <SeveralForm key={selection.join()} ids={selection} /> : null}
      {only ? <FormOf key={only} id={only} /> : null}
      <ThingActions />
    </div>
  );
}

function FormOf({ id }: { readonly id: string }): ReactNode {
  const { map } = useDraw();
  switch (idKind(id)) {
    case 'node': {
      const node = map.nodes.get(id as `node:${string}`);
      return node ? <NodeForm node={node} /> : null;
    }
    case 'segment': {
      const segment = map.segments.get(id as `segment:${string}`);
      return segment ? <RunForm segment={segment} /> : null;
    }
    case 'panel': {
      const panel = map.panels.get(id as `panel:${string}`);
      return panel ? <PanelForm panel={panel} /> : null;
    }
    case 'rub-spot': {
      const spot = map.rubSpots.get(id as `rub-spot:${string}`);
      return spot ? <RubSpotForm spot={spot} /> : null;
    }
    case 'circuit': {
      const circuit = map.circuits.get(id as `circuit:${string}`);
      return circuit ? <CircuitForm circuit={circuit} /> : null;
    }
    case 'outline': {
      const outline = map.outlines.get(id as `outline:${string}`);
      return outline ? <OutlineForm outline={outline} /> : null;
    }
    case 'underlay': {
      const underlay = map.underlays.get(id as `underlay:${string}`);
      return underlay ? <UnderlayForm underlay={underlay} /> : null;
    }
    case 'clip': {
      for (const segment of map.segments.values()) {
        const clip = segment.clips.find((each) => each.id === id);
        if (clip) return <ClipForm segment={segment} clip={clip} />;
      }
      return null;
    }
    default:
      return null;
  }
}
