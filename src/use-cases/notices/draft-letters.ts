import type { Letterhead } from '../../mail/letterhead.js';
import { dayLetter } from '../../mail/letters/day-letter.js';
import type { LetterContext } from '../../mail/letters/letter-context.js';
import type { Written } from '../../mail/letters/paper.js';
import { stopLetter } from '../../mail/letters/stop-letter.js';
import { assess } from '../../rules/assess.js';
import { addDays, type CivilDate } from '../../rules/calendar/civil-date.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { fit } from '../../rules/fit/fit.js';
import {
  type Letter,
  type LetterItem,
  planLetters,
  type Reader,
  type TrailerToday,
} from '../../rules/notice/plan-letters.js';
import type { YardTx } from '../../store/database.js';
import type { Membership, MembershipStore } from '../../store/membership-store.js';
import type { NoticeStore } from '../../store/notice-store.js';
import type { TrailerStore } from '../../store/trailer-store.js';
import type { Yard } from '../../store/yard-store.js';

/** A letter with its words, not written down yet. */
export interface Draft {
  readonly letter: Letter;
  readonly to: { readonly name: string; readonly address: string };
  readonly written: Written;
}

export interface DraftNeeds {
  readonly notices: NoticeStore;
  readonly members: MembershipStore;
  readonly trailers: TrailerStore;
  readonly letterhead: Letterhead;
}

/** Trailers with a job this near are looked at, days. Wider than any gate brief is early; the rules choose among them. */
const JOBS_AHEAD_DAYS = 15;

/** The letters that a day asks for, in their words, without the items that `tells` denies. Reads only. */
export async function draftLetters(
  tx: YardTx,
  needs: DraftNeeds,
  yard: Yard,
  asOf: CivilDate,
  tells: (item: LetterItem) => boolean = () => true,
): Promise<readonly Draft[]> {
  const ids = await needs.notices.trailersToSpeakOf(tx, asOf, addDays(asOf, JOBS_AHEAD_DAYS));
  const facts: TrailerFacts[] = [];
  for await (const one of needs.trailers.findFactsOfAll(tx, ids)) facts.push(one);
  return draftLettersAbout(tx, needs, yard, asOf, facts, tells);
}

/** The same, about some trailers only. */
export async function draftLettersAbout(
  tx: YardTx,
  { notices, members, letterhead }: Omit<DraftNeeds, 'trailers'>,
  yard: Yard,
  asOf: CivilDate,
  facts: readonly TrailerFacts[],
  tells: (item: LetterItem) => boolean = () => true,
): Promise<readonly Draft[]> {
  const ids = facts.map(({ trailer }) => trailer.id);
  const people = await members.list(tx);
  const trailers = facts.map((one) => trailerToday(one, asOf));
  const letters = planLetters({
    asOf,
    readers: people.map(reader),
    trailers,
    answers: await notices.answers(tx, ids),
    told: await notices.told(tx, ids),
  });
  const context: Omit<LetterContext, 'readerName'> = {
    yardName: yard.name,
    baseUrl: letterhead.baseUrl,
    asOf,
    trailers: new Map(trailers.map((today) => [today.trailer.id, today])),
    machineNames: new Map(facts.flatMap(({ machines }) => machines.map(({ id, name }) => [id, name] as const))),
  };
  return letters.flatMap(({ items, ...rest }) => {
    const letter = { ...rest, items: items.filter(tells) };
    if (letter.items.length === 0) return [];
    const person = people.find(({ personId }) => personId === letter.personId);
    if (person === undefined) return [];
    const to = { name: person.name, address: person.email };
    const set = letter.kind === 'stop' ? stopLetter : dayLetter;
    return [{ letter, to, written: set(letter.items, { ...context, readerName: person.name }) }];
  });
}

function trailerToday(facts: TrailerFacts, asOf: CivilDate): TrailerToday {
  return {
    trailer: facts.trailer,
    assessment: assess(facts, asOf),
    checkKinds: facts.checkKinds,
    jobs: facts.jobs
      .filter((job) => job.state === 'booked' && job.endsOn >= asOf)
      .map((job) => ({ job, fit: fit(facts, job, asOf) })),
  };
}

function reader(member: Membership): Reader {
  return {
    personId: member.personId,
    name: member.name,
    role: member.role,
    state: member.leftOn === null ? 'active' : 'left',
    reachable: member.bouncedAt === null,
  };
}
