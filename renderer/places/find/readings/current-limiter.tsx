import { useState } from 'react';
import type { CircuitState } from '#core/circuit/car-state.ts';
import { safeInjection, tradeLamps, usualInjectionA } from '#core/circuit/safe-injection.ts';
import type { Circuit } from '#core/map/records.ts';
import { conductorOhmsPerMetre } from '#core/wire/conductor-resistance.ts';
import { nameOf } from '../../../language/name-of.ts';
import { planSentence, refusalSentence, limiterWords as words } from '../../../language/readings.ts';
import { figureText, sayAmps, sayMillivolts } from '../../../language/say-figure.ts';
import { type LengthSystem, saySmallLength } from '../../../language/say-length.ts';
import { Field, Select } from '../../../parts/index.ts';
import { useFind } from '../find-context.ts';
import { mostDropCurrentA } from './form-cautions.ts';
import { parseFigure } from './parse-figure.ts';

/** The length a drop is told for, in mm: about what a technician opens up by hand. */
const pieceMm = 100;

/** Which lamp this fuse and wire bear, or what a supply is set to, and what the wire then drops. */
export function CurrentLimiter({
  circuit,
  state,
}: {
  readonly circuit: Circuit;
  readonly state: CircuitState;
}) {
  return (
    <section className="current-limiter" aria-label={words.label}>
      {circuit.ends.some(({ kind }) => kind === 'fused-supply') ? (
        <LampLimit circuit={circuit} state={state} />
      ) : (
        <SupplyLimit circuit={circuit} state={state} />
      )}
    </section>
  );
}

function LampLimit({ circuit, state }: { readonly circuit: Circuit; readonly state: CircuitState }) {
  const { open, lengths } = useFind();
  const joined = open.line?.branches ?? [];
  const best = safeInjection(circuit, state, { joined });
  const first =
    best.outcome === 'allowed' && best.plan.way === 'lamp-for-fuse'
      ? best.plan.lamp.watts
      : tradeLamps[0]?.watts;
  const [watts, setWatts] = useState(String(first));
  const lamp = tradeLamps.find((each) => String(each.watts) === watts);
  if (!lamp) return null;
  const amps = lamp.watts / lamp.volts;
  const fits = safeInjection(circuit, state, { lamps: [lamp], joined }).outcome === 'allowed';
  const say = fits ? words.fits : words.tooLarge;
  return (
    <>
      <Select
        label={words.lamp}
        value={watts}
        options={tradeLamps.map((each) => ({
          value: String(each.watts),
          label: words.lampOption(each.watts),
        }))}
        onChange={setWatts}
      />
      <p role="status">
        {say(lamp.watts, shownAmps(amps), shownAmps(mostDropCurrentA(circuit)))}
        {fits ? ` ${dropWords(circuit, amps, lengths)}` : ''}
      </p>
    </>
  );
}

function SupplyLimit({ circuit, state }: { readonly circuit: Circuit; readonly state: CircuitState }) {
  const { open, say, lengths } = useFind();
  const [wanted, setWanted] = useState(String(usualInjectionA));
  const parsed = parseFigure(wanted, 'ampere');
  const amps = parsed.kind === 'figure' && parsed.value > 0 ? parsed.value : null;
  const answer =
    amps === null ? null : safeInjection(circuit, state, { amps, joined: open.line?.branches ?? [] });
  const said =
    answer === null
      ? words.notAFigure
      : answer.outcome === 'allowed'
        ? `${planSentence(answer.plan)} ${dropWords(circuit, answer.plan.amps, lengths)}`
        : refusalSentence(answer.reason, (id) => say(nameOf(open.map, id)));
  return (
    <>
      <Field
        label={words.wanted}
        value={wanted}
        inputMode="decimal"
        autoComplete="off"
        className="reading-figure"
        onChange={setWanted}
      />
      <p role="status">{said}</p>
    </>
  );
}

/** What a short piece of this wire drops at a current. */
function dropWords(circuit: Circuit, amps: number, lengths: LengthSystem): string {
  const millivolts = conductorOhmsPerMetre(circuit.conductorMm2) * amps * pieceMm;
  return words.drop(
    figureText(sayMillivolts(Number(millivolts.toPrecision(2)))),
    figureText(saySmallLength(pieceMm, lengths)),
  );
}

const shownAmps = (amps: number): string => figureText(sayAmps(Number(amps.toFixed(2))));
