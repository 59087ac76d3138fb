import type { Painter } from '../scene.ts';
import { hatchPattern } from './hatch-pattern.ts';
import { traceLine } from './trace-line.ts';

/** Hatched areas; one that is off has lost its hatch and shows a dashed edge. */
export const paintPanels: Painter = (c, { panels, camera, colours, lit }) => {
  c.lineJoin = 'round';
  for (const panel of panels) {
    if (panel.area.length < 3) continue;
    c.beginPath();
    traceLine(c, camera, panel.area, true);
    const off = lit?.panelsOff.has(panel.id) ?? false;
    if (!off) {
      // Neighbours lean opposite ways so that an overlap shows as a lattice.
      c.fillStyle = hatchPattern(c, colours.panelHatch, panel.order % 2 === 0 ? 1 : -1, camera);
      c.fill();
    }
    c.setLineDash(off ? [7, 6] : []);
    c.strokeStyle = colours.faint;
    c.lineWidth = off ? 1.4 : 1;
    c.stroke();
  }
  c.setLineDash([]);
};
