import { describe, expect, test } from 'vitest';
import { inputLimits, inputState, inputVolts, typicalInput } from '#core/circuit/switched-input.ts';

describe('a switched input of a control unit', () => {
  test('tens of ohms to the body always read as pressed', () => {
    for (const ohms of [1, 10, 70, 240]) expect(inputState(typicalInput, ohms)).toBe('closed');
  });

  test('a dry wire reads as released', () => {
    expect(inputState(typicalInput, Number.POSITIVE_INFINITY)).toBe('open');
    expect(inputState(typicalInput, 100_000)).toBe('open');
  });

  test('between the limits nobody can say', () => {
    const { closedBelowOhms, openAboveOhms } = inputLimits(typicalInput);
    expect(inputState(typicalInput, (closedBelowOhms + openAboveOhms) / 2)).toBe('undetermined');
    expect(inputState(typicalInput, closedBelowOhms * 0.999)).toBe('closed');
    expect(inputState(typicalInput, openAboveOhms * 1.001)).toBe('open');
  });

  test('a leak of more ohms never pulls the input lower', () => {
    const volts = [0, 1, 10, 100, 1e3, 1e4, 1e6].map((ohms) => inputVolts(typicalInput, ohms));
    expect([...volts].sort((a, b) => a - b)).toEqual(volts);
  });
});
