import { describe, expect, test } from 'vitest';
import { needsWarningFlags, needsWidthPermit } from '../../../src/rules/law/size.js';
import { inch } from '../../../src/rules/units/length.js';
import { lawCases } from './law-cases.js';

describe('width on the National Network', () => {
  test.each(lawCases('width-'))('%s', (_id, { input, expected }) => {
    expect(needsWidthPermit(inch(input.widthIn))).toBe(!expected.ok);
  });
});

describe('flags on what reaches out', () => {
  test.each(lawCases('flag-'))('%s', (_id, { input, expected }) => {
    expect(needsWarningFlags(inch(input.sideOverhangIn), inch(input.rearOverhangIn))).toBe(expected.flagsRequired);
  });

  test('a hair beyond either is flagged', () => {
    expect([needsWarningFlags(inch(4.1), inch(0)), needsWarningFlags(inch(0), inch(48.1))]).toEqual([true, true]);
  });
});
