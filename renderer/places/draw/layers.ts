import type { MapDocument } from '#core/map/map-document.ts';
import { idKind } from '#core/quantity/id.ts';

/** Kinds of things that are shown, hidden and locked together on the board. */
export const layerKinds = ['pictures', 'outlines', 'panels', 'loom', 'rubSpots'] as const;
export type LayerKind = (typeof layerKinds)[number];

/** What is hidden from the board, and what is shown but cannot be picked there. Never part of a map. */
export interface Layers {
  readonly hidden: ReadonlySet<LayerKind>;
  readonly locked: ReadonlySet<LayerKind>;
}

export const allShown: Layers = { hidden: new Set(), locked: new Set() };

const empty: ReadonlyMap<never, never> = new Map<never, never>();

/** The map without what is hidden; the same object when nothing is. */
export function mapWithout(map: MapDocument, kinds: ReadonlySet<LayerKind>): MapDocument {
  if (kinds.size === 0) return map;
  return {
    ...map,
    ...(kinds.has('pictures') ? { underlays: empty } : {}),
    ...(kinds.has('outlines') ? { outlines: empty } : {}),
    ...(kinds.has('panels') ? { panels: empty } : {}),
    ...(kinds.has('loom') ? { segments: empty, nodes: empty } : {}),
    ...(kinds.has('rubSpots') ? { rubSpots: empty } : {}),
  };
}

/** Which kind a record is shown, hidden and locked with; null for what has no place on the board. */
export function layerOf(id: string): LayerKind | null {
  switch (idKind(id)) {
    case 'underlay':
      return 'pictures';
    case 'outline':
      return 'outlines';
    case 'panel':
      return 'panels';
    case 'segment':
    case 'node':
    case 'clip':
      return 'loom';
    case 'rub-spot':
      return 'rubSpots';
    default:
      return null;
  }
}

/** Whether a thing can be picked on the board. */
export function mayPick({ hidden, locked }: Layers, id: string): boolean {
  const kind = layerOf(id);
  return kind === null || !(hidden.has(kind) || locked.has(kind));
}

/** Everything that can be picked: neither hidden nor locked, without one of the sets of kinds twice. */
export const outOfReach = ({ hidden, locked }: Layers): ReadonlySet<LayerKind> =>
  new Set([...hidden, ...locked]);
