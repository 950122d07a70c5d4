import type { CivilDate } from '../calendar/civil-date.js';
import { type ItemSubject, subjectOf } from './item-key.js';
import type { Answer } from './letter.js';

/** What people answered, by what it is about: an answer to any letter about a check holds for the check, until it is done. */
export class Answers {
  private readonly later = new Map<ItemSubject, CivilDate>();
  private readonly handedOn = new Map<ItemSubject, Set<string>>();

  constructor(answers: readonly Answer[]) {
    for (const { itemKey, personId, answer, until } of answers) {
      const subject = subjectOf(itemKey);
      if (subject === null) continue;
      if (answer === 'not-mine') {
        const people = this.handedOn.get(subject) ?? new Set();
        this.handedOn.set(subject, people.add(personId));
      } else if (until !== null && until > (this.later.get(subject) ?? '')) {
        this.later.set(subject, until);
      }
    }
  }

  /**
   * The day on which a check that was put off is told again; null when nobody put it off. Where someone can be hurt
   * that is no later than `latest`, the day before the trailer's next job, whenever that job was booked.
   */
  putOffUntil(subject: ItemSubject, latest: CivilDate | null): CivilDate | null {
    const until = this.later.get(subject) ?? null;
    return until !== null && latest !== null && latest < until ? latest : until;
  }

  handedOnBy(subject: ItemSubject): ReadonlySet<string> {
    return this.handedOn.get(subject) ?? new Set();
  }
}
