import type { Trailer } from '../../rules/facts/trailer.js';
import { isSameNumber, looksAlike } from '../../rules/trailer/look-alikes.js';
import type { SeenSheet } from './check-input.js';
import { type Given, TEXT } from './given.js';

/** More holds, or records of one day, than a sheet will ever have shown. */
const MOST_IDS = 200;

/** What a sheet showed when it was opened; null when the sending does not say. */
export function readSeenSheet(given: Given): SeenSheet | null {
  if (!given.has('seen')) return null;
  const seen = given.object('seen');
  const ids = (key: string) =>
    seen.texts(key, 'the ids the sheet showed', TEXT.name, MOST_IDS).map((id) => id.toLowerCase());
  return {
    yardNumber: seen.needText('yardNumber', 'the number the sheet showed', TEXT.mark),
    buildSheetId: seen.id('buildSheetId', 'the build sheet it was made from'),
    linesMark: seen.needText('linesMark', 'the mark of its lines', TEXT.name),
    openHoldIds: ids('openHoldIds'),
    lastDoneOn: seen.date('lastDoneOn', 'the day the check was last done'),
    lastRecordIds: ids('lastRecordIds'),
  };
}

/**
 * The number somebody read off the trailer before signing. Any other than this trailer's is refused: a sheet kept under
 * the wrong trailer passes one nobody looked at. Who read it before the trailer was given a new number read it rightly.
 */
export function readPaintedNumber(given: Given, trailer: Trailer, seen: SeenSheet | null): void {
  const read = given.text('paintedNumber', 'the number painted on the trailer', TEXT.mark);
  if (read === null || [trailer.yardNumber, seen?.yardNumber].some((own) => own && isSameNumber(read, own))) return;
  const alike = looksAlike(read, trailer.yardNumber) ? ' The two look alike.' : '';
  given.refuse(
    'paintedNumber',
    `This sheet is for ${trailer.yardNumber}, and ${read} was read on the trailer.${alike} Go to ${trailer.yardNumber}, or fill in the sheet of the trailer you stand at.`,
  );
}
