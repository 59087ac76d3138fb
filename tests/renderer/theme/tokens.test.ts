import { describe, expect, test } from 'vitest';
import { themeProperties } from '#renderer/theme/apply-theme.ts';
import { accentStep, boardColours, controlColours, themes } from '#renderer/theme/tokens.ts';
import { contrast, hueDegrees, lightness, lightOf, luminance, type Sight, seenBy } from './seen-colour.ts';

const sights: readonly Sight[] = ['ordinary', 'protanopia', 'deuteranopia', 'greyscale'];

describe('the measure itself', () => {
  test('black on white has the greatest contrast there is, and grey #767676 just passes on white', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  test('every simulated sight leaves white white', () => {
    for (const sight of sights) {
      for (const channel of seenBy(sight, [1, 1, 1])) expect(channel).toBeCloseTo(1, 4);
    }
  });
});

describe.each(themes)('the %s theme', (theme) => {
  const board = boardColours[theme];
  const controls = controlColours[theme];
  const grounds = {
    paper: board.paper,
    ground: controls.ground,
    raised: controls.raised,
    hover: controls.hover,
  };

  test.each(Object.entries(grounds))('text is readable on %s', (_, ground) => {
    expect(contrast(board.ink, ground)).toBeGreaterThanOrEqual(7);
    expect(contrast(board.quiet, ground)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(board.warning, ground)).toBeGreaterThanOrEqual(4.5);
  });

  test('text is readable on a pressed button, on a hovered main button and in a caution', () => {
    expect(contrast(controls.inkOnDark, board.ink)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(controls.inkOnDark, board.graphite)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(controls.cautionText, controls.cautionGround)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(board.ink, controls.cautionGround)).toBeGreaterThanOrEqual(4.5);
  });

  test('outlines, control edges and the found ring stand out from the paper', () => {
    expect(contrast(board.graphite, board.paper)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(controls.ruleStrong, controls.raised)).toBeGreaterThanOrEqual(3);
    expect(contrast(controls.ruleStrong, board.paper)).toBeGreaterThanOrEqual(3);
    expect(contrast(board.found, board.paper)).toBeGreaterThanOrEqual(7);
  });

  test('the grid stays behind everything drawn on it', () => {
    expect(contrast(board.gridMajor, board.paper)).toBeLessThan(1.6);
    expect(contrast(board.gridMinor, board.paper)).toBeLessThan(contrast(board.gridMajor, board.paper));
  });

  test.each(sights)('likelihood keeps its order for %s sight', (sight) => {
    const steps = board.accent.map((hex) => lightness(luminance(seenBy(sight, lightOf(hex)))));
    const towardsLikely = theme === 'day' ? -1 : 1;
    for (let i = 1; i < steps.length; i++) {
      // Two lightness units are a difference an eye sees side by side; a stroke's width helps besides.
      expect(((steps[i] as number) - (steps[i - 1] as number)) * towardsLikely).toBeGreaterThan(2);
    }
  });

  test('likelihood falls in even steps and is one hue', () => {
    const steps = board.accent.map((hex) => lightness(luminance(lightOf(hex))));
    const gaps = steps.slice(1).map((step, i) => Math.abs(step - (steps[i] as number)));
    expect(Math.max(...gaps) / Math.min(...gaps)).toBeLessThan(2);
    const hues = board.accent.map((hex) => hueDegrees(lightOf(hex)));
    expect(Math.max(...hues) - Math.min(...hues)).toBeLessThan(25);
  });

  test('the likeliest step stands out most from the paper', () => {
    const contrasts = board.accent.map((hex) => contrast(hex, board.paper));
    expect([...contrasts].sort((a, b) => a - b)).toEqual(contrasts);
    expect(contrasts[6]).toBeGreaterThanOrEqual(7);
  });

  test('sheets get every colour the canvas has', () => {
    const properties = themeProperties(theme);
    expect(properties.get('--paper')).toBe(board.paper);
    expect(properties.get('--grid-minor')).toBe(board.gridMinor);
    expect(properties.get('--accent-7')).toBe(board.accent[6]);
    expect(properties.get('--ink-on-dark')).toBe(controls.inkOnDark);
  });
});

test('a likelier place never gets a fainter step, and the likeliest gets the last', () => {
  let before = 0;
  for (let share = 0; share <= 1; share += 0.01) {
    const step = accentStep(share);
    expect(step).toBeGreaterThanOrEqual(before);
    before = step;
  }
  expect(accentStep(1)).toBe(6);
  expect(accentStep(-1)).toBe(0);
  expect(accentStep(2)).toBe(6);
});
