/** A pulled-up input of a control unit and the voltages it decides by. */
export interface PulledUpInput {
  readonly pullUpVolts: number;
  readonly pullUpOhms: number;
  /** Below this share of the pull-up voltage the input reads closed. */
  readonly closedBelow: number;
  /** Above this share it reads open. */
  readonly openAbove: number;
}

/** 1 kilohm to 5 V: common practice, no source. 0.3 and 0.7 are the usual CMOS limits, from memory. */
export const typicalInput: PulledUpInput = {
  pullUpVolts: 5,
  pullUpOhms: 1_000,
  closedBelow: 0.3,
  openAbove: 0.7,
};

/** What the control unit takes an input for; between the limits nobody can say. */
export type InputState = 'closed' | 'open' | 'undetermined';

/**
 * Volts at a pulled-up input with a leak to the body: Vpu R / (R + Rpu).
 * @example
 * inputVolts(typicalInput, 70) // => 0.327103
 */
export function inputVolts(input: PulledUpInput, leakOhms: number): number {
  if (leakOhms === Number.POSITIVE_INFINITY) return input.pullUpVolts;
  return (input.pullUpVolts * leakOhms) / (leakOhms + input.pullUpOhms);
}

/**
 * What the control unit takes a leak to the body for.
 * @example
 * inputState(typicalInput, 70) // => 'closed'
 */
export function inputState(input: PulledUpInput, leakOhms: number): InputState {
  const share = inputVolts(input, leakOhms) / input.pullUpVolts;
  if (share < input.closedBelow) return 'closed';
  return share > input.openAbove ? 'open' : 'undetermined';
}

/**
 * Leaks at which the input's answer changes: Rpu share / (1 - share), in ohm.
 * @example
 * inputLimits({ ...typicalInput, pullUpOhms: 4700 }) // => { closedBelowOhms: 2014.29, openAboveOhms: 10966.7 }
 */
export function inputLimits(input: PulledUpInput): {
  readonly closedBelowOhms: number;
  readonly openAboveOhms: number;
} {
  const at = (share: number): number => (input.pullUpOhms * share) / (1 - share);
  return { closedBelowOhms: at(input.closedBelow), openAboveOhms: at(input.openAbove) };
}

/** Limits for an input nobody knows: a published automotive switch-input part accepts up to 220 ohm closed and 5 kilohm open. */
export const unknownInputLimits = { closedBelowOhms: 240, openAboveOhms: 5_000 } as const;
