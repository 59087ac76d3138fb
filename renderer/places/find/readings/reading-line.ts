import type { CarState, Probe, Stretch } from '#core/job/reading.ts';
import { joinRanges } from '#core/locate/station-ranges.ts';
import { nameOf } from '../../../language/name-of.ts';
import { readingWords, testWords } from '../../../language/readings.ts';
import {
  figureText,
  sayAmps,
  sayMillivolts,
  sayOhms,
  sayPicofarads,
  sayVolts,
} from '../../../language/say-figure.ts';
import { whereLine } from '../../../language/say-where.ts';
import { circuitRanges } from '../../../session/stretches-between.ts';
import type { FindView } from '../find-context.ts';
import { fuseNodes } from './lead.ts';
import type { ReadingEntry } from './reading-form.ts';

type Sayer = Pick<FindView, 'open' | 'say' | 'where'>;
const { line: words, state: stateWords, form } = readingWords;

/** A kept reading in one line: the test, where, and what it showed. */
export function readingLine({ reading, state, note }: ReadingEntry, view: Sayer): string {
  const name = (probe: Probe): string => leadName(probe, view);
  const test = testWords[reading.test];
  switch (reading.test) {
    case 'ohms':
      return `${test}, ${words.between(name(reading.from), name(reading.to))}: ${shownOhms(reading.ohms)}`;
    case 'beep':
      return `${test}, ${words.between(name(reading.from), name(reading.to))}: ${reading.beeps ? words.beeps : words.silent}`;
    case 'volts':
      return `${test}, ${words.between(name(reading.from), name(reading.to))}: ${figureText(sayVolts(reading.volts))}`;
    case 'drop':
      return `${test}, ${words.drop(name(reading.driven), name(reading.sensed), figureText(sayAmps(reading.currentA)))}: ${figureText(sayMillivolts(reading.millivolts))}`;
    case 'capacitance':
      return `${test}, ${name(reading.at)}: ${figureText(sayPicofarads(reading.picofarads))}`;
    case 'symptom': {
      const apart = capital(apartLine(state, view) || words.nothingApart);
      return reading.stays ? words.stays(apart) : words.gone(apart);
    }
    case 'move':
      return words.moved(movedPlace(reading.stretches, view), reading.changed, reading.tried);
    case 'function': {
      const place = reading.stretches.length > 0 ? `, ${movedPlace(reading.stretches, view)}` : '';
      const position = note === '' ? '' : ` (${note})`;
      return `${test}${place}${position}: ${reading.works ? words.works : words.fails}`;
    }
  }
}

/** How the car stood, in one line. */
export function stateLine(state: CarState, view: Sayer): string {
  return [
    apartLine(state, view) || stateWords.nothingApart,
    ...(state.switchClosed === null ? [] : [stateWords.switch(state.switchClosed)]),
    stateWords.ignition(state.ignitionOn),
    stateWords.battery(state.batteryConnected),
  ].join(', ');
}

/** What is apart and whether the fuse is out; empty when nothing is. */
function apartLine({ apartNodeIds }: CarState, { open, say }: Sayer): string {
  const fuses = fuseNodes(open.line);
  const plugs = apartNodeIds.filter((id) => !fuses.has(id)).map((id) => say(nameOf(open.map, id)));
  return [
    ...(plugs.length > 0 ? [stateWords.apart(plugs.join(', '))] : []),
    ...(apartNodeIds.some((id) => fuses.has(id)) ? [stateWords.fuseOut] : []),
  ].join(', ');
}

/** Where a lead sat, by name: plug and its half, body, or another circuit's wire. */
export function leadName(probe: Probe, view: Sayer): string {
  if (probe.on === 'body') return form.body;
  if (probe.on === 'battery-positive') return form.battery;
  const { map, line } = view.open;
  const place = view.say(nameOf(map, probe.nodeId));
  const ends = line ? [line.nodes[0]?.nodeId, line.nodes.at(-1)?.nodeId] : [];
  const end = probe.side === 'first-end' ? ends[0] : ends[1];
  const half = probe.side && end ? form.half(place, view.say(nameOf(map, end))) : place;
  if (probe.circuitId === undefined || probe.circuitId === line?.circuit.id) return half;
  return `${half} (${view.say(nameOf(map, probe.circuitId))})`;
}

export function shownOhms(ohms: number | 'open-line' | 'over-range'): string {
  if (ohms === 'open-line') return form.openLine.toLowerCase();
  if (ohms === 'over-range') return form.overRange.toLowerCase();
  return figureText(sayOhms(ohms));
}

function movedPlace(stretches: readonly Stretch[], view: Sayer): string {
  const { line, map } = view.open;
  const ranges = line ? joinRanges(stretches.flatMap((stretch) => circuitRanges(line, stretch))) : [];
  return ranges.length > 0
    ? ranges.map((range) => whereLine(view.where(range))).join('; ')
    : stretches.map((stretch) => view.say(nameOf(map, stretch.segmentId))).join(', ');
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
