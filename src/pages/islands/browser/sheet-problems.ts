import { PLAUSIBLE_MEASURED } from '../../../rules/facts/plausible.js';
import { isSameNumber, looksAlike } from '../../../rules/trailer/look-alikes.js';
import { readNumber } from '../../form/read-number.js';
import type { CheckSheetData } from '../../sheets/sheet-data.js';
import { measuredFix, measuredUnit } from '../../words/measured-words.js';

type Fields = readonly (readonly [string, string])[];

const LINE_FIELD = /^lines\.(.+)\.[^.]+\.(value|result)$/;

/** The lines that keep people safe and were found bad. */
export function badSafetyLines(fields: Fields, { safety }: Pick<CheckSheetData, 'safety'>): readonly string[] {
  const bad = fields.flatMap(([name, value]) => {
    const [, code, what] = LINE_FIELD.exec(name) ?? [];
    const text = what === 'result' && value === 'bad' ? safety[code ?? ''] : undefined;
    return text === undefined ? [] : [text];
  });
  return [...new Set(bad)];
}

/** What is wrong with the number read off the trailer; null when it is this trailer's, or nothing was entered yet. */
export function wrongNumber(read: string, data: Pick<CheckSheetData, 'yardNumber' | 'lookAlikes'>): string | null {
  if (read.trim() === '' || isSameNumber(read, data.yardNumber)) return null;
  const isOther = data.lookAlikes.some((other) => isSameNumber(read, other));
  const alike = looksAlike(read, data.yardNumber) ? ' The two look alike.' : '';
  const there = isOther ? ` There is a ${read.trim()} in this yard.` : '';
  return `You read ${read.trim()}; this sheet is for ${data.yardNumber}.${alike}${there} Nothing is signed for the wrong trailer.`;
}

/**
 * All that keeps a sheet from being signed. The service asks the same again; without a signal its answer would come
 * when nobody stands at the trailer any more.
 */
export function whatIsWrong(
  sheet: { readonly fields: Fields; readonly signature: object | null },
  data: CheckSheetData,
): readonly string[] {
  const text = (name: string) => sheet.fields.find(([one]) => one === name)?.[1].trim() ?? '';
  const wrong: string[] = [];
  const answered = sheet.fields.some(([name, value]) => LINE_FIELD.test(name) && value.trim() !== '');
  const outcome = text('outcome');
  if (!answered && outcome === '') wrong.push('Answer the lines of the sheet, or say how the check came out.');
  if (outcome === 'pass' && badSafetyLines(sheet.fields, data).length > 0) {
    wrong.push('A line that keeps people safe is bad: mark the check as failed, or mend it and mark the line OK.');
  }
  for (const [name, quantity] of Object.entries(data.measures)) {
    const shown = readNumber(text(name));
    if (shown === null) continue;
    const value = measuredUnit(quantity).toSi(shown);
    const { low, high } = PLAUSIBLE_MEASURED[quantity];
    if (!(value >= low - 1e-6 && value <= high + 1e-6)) wrong.push(measuredFix(quantity));
  }
  if (text('doneOn') === '') wrong.push('Say on which day it was done.');
  const read = text('paintedNumber');
  const otherNumber = wrongNumber(read, data);
  if (read === '') wrong.push('Enter the number painted on the trailer, or scan its label.');
  if (otherNumber !== null) wrong.push(otherNumber);
  if (sheet.signature === null && text('signedName') === '')
    wrong.push('Sign it: draw your signature, or type your name.');
  return [...new Set(wrong)];
}
