import type { PlanPoint } from '#core/geometry/place.ts';
import { cautions, panelKinds } from '#core/map/kinds.ts';
import type { Outline, Panel, Underlay, Vertex } from '#core/map/records.ts';
import { newId } from '#core/quantity/id.ts';
import type { Draw } from './draw.ts';

const box = (xMm: number, yMm: number, lengthMm: number, widthMm: number): PlanPoint[] => [
  { xMm, yMm },
  { xMm: xMm + lengthMm, yMm },
  { xMm: xMm + lengthMm, yMm: yMm + widthMm },
  { xMm, yMm: yMm + widthMm },
];

/** A shell with a rounded nose, two seats and two sills. */
export function randomOutlines(draw: Draw, lengthMm: number, halfWidthMm: number): Outline[] {
  const nose: Vertex = {
    xMm: draw.between(0, 60),
    yMm: 0,
    handleIn: { dxMm: 0, dyMm: draw.between(300, 500) },
    handleOut: { dxMm: 0, dyMm: -draw.between(300, 500) },
  };
  const shell: Vertex[] = [
    nose,
    { xMm: 500, yMm: -halfWidthMm },
    { xMm: lengthMm - 300, yMm: -halfWidthMm },
    { xMm: lengthMm, yMm: -halfWidthMm + 200 },
    { xMm: lengthMm, yMm: halfWidthMm - 200 },
    { xMm: lengthMm - 300, yMm: halfWidthMm },
    { xMm: 500, yMm: halfWidthMm },
  ];
  const outline = (name: string, kind: Outline['kind'], vertices: Vertex[], order: number): Outline => ({
    id: newId('outline', draw.chance),
    name,
    kind,
    closed: true,
    vertices,
    order,
  });
  return [
    outline('Shell', 'shell', shell, 0),
    outline('Left seat', 'seat', box(1_500, -600, 550, 500), 1),
    outline('Right seat', 'seat', box(1_500, 100, 550, 500), 2),
    outline('Left sill', 'sill', box(1_000, -halfWidthMm + 10, 1_800, 120), 3),
    outline('Right sill', 'sill', box(1_000, halfWidthMm - 130, 1_800, 120), 4),
  ];
}

/** Panels anywhere in the car; each may wait for earlier ones, so their order never makes a ring. */
export function randomPanels(draw: Draw, count: number, lengthMm: number, halfWidthMm: number): Panel[] {
  const panels: Panel[] = [];
  for (let order = 0; order < count; order++) {
    const firsts = panels.filter(() => draw.happens(0.8 / (panels.length + 1))).map((panel) => panel.id);
    panels.push({
      id: newId('panel', draw.chance),
      name: `panel ${order}`,
      kind: draw.pick(panelKinds),
      area: draw.happens(0.9)
        ? box(
            draw.between(0, lengthMm - 600),
            draw.between(-halfWidthMm, halfWidthMm - 300),
            draw.between(200, 900),
            draw.between(150, 700),
          )
        : [],
      minutesOff: draw.whole(2, 30),
      minutesOn: draw.whole(2, 35),
      offFirst: firsts,
      cautions: draw.happens(0.3) ? [draw.pick(cautions)] : [],
      note: '',
      order,
    });
  }
  return panels;
}

/** A picture under the drawing; its bytes are somewhere else. */
export function randomUnderlay(draw: Draw): Underlay {
  return {
    id: newId('underlay', draw.chance),
    name: 'Floor photo',
    imageSha256: 'ab'.repeat(32),
    mediaType: 'image/jpeg',
    widthPx: draw.whole(400, 4_000),
    heightPx: draw.whole(300, 3_000),
    origin: { xMm: draw.between(-200, 200), yMm: draw.between(-1_000, -800) },
    mmPerPx: draw.between(0.5, 5),
    turnRad: draw.between(-0.1, 0.1),
    opacity: 0.5,
    hidden: draw.happens(0.2),
    order: 0,
  };
}
