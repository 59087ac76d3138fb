import { mapText } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Panel, RubSpot } from '#core/map/records.ts';
import { sample } from '#tests/sample.ts';

const square = (xMm: number, yMm: number): Panel['area'] => [
  { xMm, yMm },
  { xMm: xMm + 300, yMm },
  { xMm: xMm + 300, yMm: yMm + 200 },
  { xMm, yMm: yMm + 200 },
];

const spot = (number: number, xMm: number, yMm: number): RubSpot => ({
  ...sample.rubSpot,
  id: `rub-spot:spot${number}`,
  name: `Burr ${number}`,
  points: [{ xMm, yMm, zMm: 0 }],
  severity: number === 3 ? 3 : 1,
});

/** The sample's three runs with two panels that have areas and three rub spots apart from one another. */
const map: MapDocument = {
  ...sample.map,
  id: 'map:verbs',
  details: { ...sample.map.details, name: 'Pellow Ardent, small van' },
  panels: new Map([
    [sample.tread.id, { ...sample.tread, area: square(200, 250) }],
    [sample.seat.id, { ...sample.seat, area: square(800, 250), cautions: ['glass'] }],
  ]),
  rubSpots: new Map(
    [spot(1, 200, -300), spot(2, 500, -400), spot(3, 1_100, -350)].map((each) => [each.id, each]),
  ),
};

/** The map's file as it comes from elsewhere. */
export const verbsText: string = mapText(map);

/** The same with two places where it does not hang together. */
export const brokenText: string = verbsText
  .replace('"offFirst":["panel:tread"]', '"offFirst":["panel:none"]')
  .replace('"stationMm":400', '"stationMm":900');
