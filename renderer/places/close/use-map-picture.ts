import { useMemo } from 'react';
import type { EntryOf } from '#core/job/job-document.ts';
import { canvasMeasure } from '../../drawing-export/canvas-measure.ts';
import { pageType } from '../../drawing-export/map-drawing.tsx';
import { mapSvg } from '../../drawing-export/map-svg.ts';
import { boardColours } from '../../theme/tokens.ts';
import { useFind } from '../find/find-context.ts';
import { litOf } from '../find/lit-of.ts';
import { saidMap } from '../find/said-map.ts';

/** As wide as a page's text, so that names are as large as the text. */
const longSidePx = 640;

/** A page is white already. */
const colours = { ...boardColours.day, paper: '#ffffff' };

/** The map by day with the circuit and the places of some finds marked, as SVG. */
export function useMapPicture(finds: readonly EntryOf<'finding'>[]): string {
  const { open, standing, say, lengths } = useFind();
  const { map, line } = open;
  return useMemo(() => {
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
    return mapSvg(shown, colours, {
      lit,
      lengths,
      longSidePx,
      titled: false,
      fontFamily: pageType,
      measure: canvasMeasure(pageType),
    });
  }, [finds, map, line, standing, say, lengths]);
}
