import { expect, test } from 'vitest';
import { numberTrouble } from '#renderer/language/numbers.ts';
import { couldBeThousands, readNumber } from '#renderer/parts/read-number.ts';

const free = { min: Number.NEGATIVE_INFINITY, max: Number.POSITIVE_INFINITY, mayBeEmpty: false };

test('a figure may be typed with a point or a comma, and words are no figure', () => {
  expect(readNumber('88 000')).toBe(88_000);
  expect(readNumber('0,35')).toBe(0.35);
  expect(readNumber('.5')).toBe(0.5);
  expect(readNumber('-2')).toBe(-2);
  for (const text of ['', '-', '1e5', '1.2.3', 'ten', '.']) expect(readNumber(text)).toBeNull();
});

test('commas between thousands are read where they can be nothing else', () => {
  expect(readNumber('1,234,567')).toBe(1_234_567);
  expect(readNumber('1,200.5')).toBe(1200.5);
  expect(readNumber('0,350')).toBe(0.35);
  expect(readNumber('12,5')).toBe(12.5);
  expect(readNumber('1200,125')).toBe(1200.125);
  for (const text of ['1,23,456', '1.200,5', '1,2,3']) expect(readNumber(text)).toBeNull();
});

test('a figure that is one thing to one reader and another to the next is asked for again, never guessed', () => {
  for (const text of ['1,200', '120,500', '-1,200', ' 1,200 ']) {
    expect(readNumber(text)).toBeNull();
    expect(couldBeThousands(text)).toBe(true);
  }
  for (const text of ['1,2', '0,200', '1200', '1,234,567', '1.200'])
    expect(couldBeThousands(text)).toBe(false);
  expect(numberTrouble('120,500', true, free)).toBe(
    '120,500 can be read in two ways. Enter 120500 or 120.5.',
  );
});

test('what is wrong with a figure names the bounds there are', () => {
  expect(numberTrouble('x', false, free)).toBe('Enter a number.');
  expect(numberTrouble('x', false, { ...free, min: 0 })).toBe('Enter a number of 0 or more.');
  expect(numberTrouble('x', false, { ...free, max: 20, mayBeEmpty: true })).toBe(
    'Enter a number up to 20, or nothing.',
  );
  expect(numberTrouble('7', false, { min: 1, max: 5, mayBeEmpty: false })).toBe(
    'Enter a number from 1 to 5.',
  );
});
