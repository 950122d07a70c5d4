import type { CivilDate } from '../calendar/civil-date.js';
import { order } from '../history/order.js';
import { Answers } from './answers.js';
import { checkItems } from './check-items.js';
import { gateBriefs } from './gate-briefs.js';
import type { Addressed, Letter, LetterInput, LetterItem } from './letter.js';
import { stopItems } from './stop-items.js';
import { Readers } from './who-is-told.js';

export type { Answer, Letter, LetterInput, LetterItem, Reader, TrailerToday } from './letter.js';

/**
 * Which letters this day asks for. Running it twice on one day, or in two processes, gives the same letters: what was
 * told today counts as not told yet, and the letter's key keeps it from being written twice.
 *
 * Nothing is told of a trailer that is sold or scrapped, and no check of one that is down: it is asked for again when
 * the trailer may go out.
 */
export function planLetters(input: LetterInput): readonly Letter[] {
  const { asOf, told } = input;
  const readers = new Readers(input.readers);
  const answers = new Answers(input.answers);
  const trailers = input.trailers
    .filter(({ assessment }) => assessment.readiness !== 'gone')
    .sort((a, b) => order(a.trailer.yardNumber, b.trailer.yardNumber) || order(a.trailer.id, b.trailer.id));
  const isNew = ({ item }: Addressed): boolean => {
    const toldOn = told.get(item.key);
    return toldOn === undefined || toldOn >= asOf;
  };

  const stops = trailers.flatMap((trailer) => stopItems(trailer, readers)).filter(isNew);
  const checks = trailers.map((trailer) => checkItems(trailer, readers, answers, asOf));
  const today = trailers
    .flatMap((trailer, index) => [...gateBriefs(trailer, readers, asOf), ...(checks[index]?.items ?? [])])
    .filter(isNew);
  const failed = failedAddresses(readers, checks.flatMap((found) => found.missed).filter(isNew), asOf).filter(isNew);
  return [...stops.map(stopLetter), ...dayLetters([...failed, ...today], asOf)];
}

function stopLetter({ personId, item }: Addressed): Letter {
  return { personId, kind: 'stop', key: item.key, items: [item] };
}

/** One letter a person, its items in the order of the trailers. */
function dayLetters(items: readonly Addressed[], asOf: CivilDate): readonly Letter[] {
  const byPerson = new Map<string, LetterItem[]>();
  for (const { personId, item } of items) {
    const own = byPerson.get(personId);
    if (own === undefined) byPerson.set(personId, [item]);
    else own.push(item);
  }
  return [...byPerson]
    .map(([personId, own]) => ({ personId, kind: 'day' as const, key: `day|${personId}|${asOf}`, items: own }))
    .sort((a, b) => order(a.personId, b.personId));
}

/** Told to the owners when something that today would have gone to a failed address goes elsewhere. */
function failedAddresses(readers: Readers, missed: readonly Addressed[], asOf: CivilDate): readonly Addressed[] {
  return readers.unreachable().flatMap((reader) => {
    const items = missed.filter(({ personId }) => personId === reader.personId).map(({ item }) => item.key);
    if (items.length === 0) return [];
    const key = `address-failed:${reader.personId}:${asOf}`;
    const item = {
      kind: 'address-failed' as const,
      key,
      personId: reader.personId,
      personName: reader.name,
      items: items.sort(),
    };
    return readers.owners().map((owner) => ({ personId: owner.personId, item }));
  });
}
