import { describe, expect, test } from 'vitest';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { lastGoodDay } from '../../../src/rules/inspection/triggers/months.js';
import {
  driverReportRequired,
  driverReportsApply,
  fileRequired,
  inspectorTimeIsEnough,
  keepEvidenceThrough,
  notInspected,
} from '../../../src/rules/law/records.js';
import { lawCases } from './law-cases.js';

const ANNUAL = { kind: 'months', every: 12, toMonthEnd: true } as const;

describe('who must write and keep what', () => {
  test.each(lawCases('maint-29days'))('%s', (_id, { input, expected }) => {
    expect(fileRequired(input.daysControlled)).toBe(expected.recordsRequired);
    expect(fileRequired(30)).toBe(true);
  });

  test.each(lawCases('dvir-nodefect'))('%s', (_id, { input, expected }) => {
    expect(driverReportRequired(input.defectsFound)).toBe(expected.writtenReportRequired);
    expect(driverReportRequired(1)).toBe(true);
  });

  test.each(lawCases('dvir-onevehicle'))('%s', (_id, { input, expected }) => {
    expect(driverReportsApply(input.cmvsOperated)).toBe(expected.sectionApplies);
    // A truck with a trailer behind it makes two.
    expect(driverReportsApply(2)).toBe(true);
  });
});

describe('who may inspect', () => {
  test.each(lawCases('qual-inspector'))('%s', (_id, { input, expected }) => {
    expect(inspectorTimeIsEnough(input)).toBe(expected.timeOk);
  });

  test('eleven months and no certificate are not enough', () => {
    expect(inspectorTimeIsEnough({ certificate: false, trainingMonths: 5, experienceMonths: 6 })).toBe(false);
  });

  test.each(lawCases('qual-evidence'))('%s', (_id, { input, expected }) => {
    expect(keepEvidenceThrough(day(input.stoppedInspecting))).toBe(expected.keepEvidenceThrough);
  });
});

describe('each vehicle of a combination has its own annual inspection', () => {
  test.each(lawCases('combo-inspect'))('%s', (_id, { input, expected }) => {
    const goodThrough = (passed: string | null) =>
      passed === null ? null : lastGoodDay(ANNUAL, { doneOn: day(passed), inspectedBy: 'own' });
    const missing = notInspected(
      [
        { name: 'truck', goodThrough: goodThrough(input.truckPassed) },
        { name: 'trailer', goodThrough: goodThrough(input.trailerPassed) },
      ],
      day(input.asOf),
    );
    expect([missing.length === 0, missing[0]]).toEqual([expected.combinationOk, expected.missing]);
  });

  test('the last good day is still good, the next is not', () => {
    const vehicles = [{ name: 'trailer', goodThrough: day('2025-03-15') }];
    expect(notInspected(vehicles, day('2025-03-15'))).toEqual([]);
    expect(notInspected(vehicles, day('2025-03-16'))).toEqual(['trailer']);
  });
});
