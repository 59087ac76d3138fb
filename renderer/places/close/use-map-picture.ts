import { useEffect, useMemo, useState } from 'react';
import type { EntryOf } from '#core/job/job-document.ts';
import { mapSvg } from '../../drawing-export/map-svg.ts';
import { boardColours } from '../../theme/tokens.ts';
import { useFind } from '../find/find-context.ts';
import { litOf } from '../find/lit-of.ts';
import { saidMap } from '../find/said-map.ts';

/** Few enough that marks and names stay large on a page. */
const longSidePx = 800;

/** A page is white already. */
const colours = { ...boardColours.day, paper: '#ffffff' };

/** The map by day with the circuit and the places of some finds marked, as an address an image can show. */
export function useMapPicture(finds: readonly EntryOf<'finding'>[]): string | null {
  const { open, standing, say, lengths } = useFind();
  const { map, line } = open;
  const svg = useMemo(() => {
    const looks = finds.map(({ id, at, stretches, result }) => ({
      id,
      at,
      type: 'inspection' as const,
      stretches,
      result: result === 'proved-cause' ? ('found' as const) : ('seen-damaged-not-cause' as const),
      lookQuality: 1,
      note: '',
    }));
    const lit = line ? litOf(line, null, looks, []) : null;
    // What was never touched would only hide the place.
    const opened = new Set(standing.flatMap((entry) => (entry.type === 'panel-off' ? entry.panelId : [])));
    const panels = new Map([...map.panels].filter(([id]) => opened.has(id)));
    const shown = { ...saidMap(map, say), panels, rubSpots: new Map() };
    return mapSvg(shown, colours, { lit, lengths, longSidePx });
  }, [finds, map, line, standing, say, lengths]);
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return address;
}
