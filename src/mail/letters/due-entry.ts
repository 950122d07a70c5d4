import type { LetterItem } from '../../rules/notice/plan-letters.js';
import { dueMark, dueReason, ifNot, PLACE, usedWords } from '../words/due-words.js';
import { hours, list, milesOf, onDay, onDays } from '../words/show.js';
import { checkKindsOf, jobOf, type LetterContext, trailerName, trailerOf } from './letter-context.js';
import type { Entry, Fact } from './paper.js';

type DueItem = Extract<LetterItem, { kind: 'due-soon' | 'overdue' }>;

/** Longer lists of days say no more than this many runs do. */
const MOST_RUNS = 4;

/** One check to do: what, by when and why, which job it blocks, how long, what to bring, when the trailer is there. */
export function dueEntry(item: DueItem, context: LetterContext): Entry {
  const today = trailerOf(context, item.trailerId);
  const { trailer } = today;
  const kind = checkKindsOf(today).get(item.due.checkKindId);
  const { asOf } = context;
  const says = [
    ...blockedJob(item, context),
    ...(kind === undefined ? [] : [dueReason(item.due, kind, asOf)]),
    ...(kind === undefined ? [] : [ifNot(kind, item.due.state, trailer.yardNumber)]),
    ...(item.unowned ? ['Whoever had this check cannot do it now, so it comes to you.'] : []),
  ];
  return {
    tone: item.kind === 'overdue' || item.due.firstJobAtRisk !== null ? 'first' : 'plain',
    title: `${trailerName(trailer)}: ${kind?.name ?? item.code}`,
    mark: dueMark(item.due, asOf),
    says,
    todo: [],
    facts: dueFacts(item, context),
    link: { text: 'Done, later, or not mine', url: `${context.baseUrl}/answer?item=${encodeURIComponent(item.key)}` },
  };
}

/**
 * For a subject: `T-07 by Mon 2 Jun, before Hollow Rd Mon 9 Jun: repack the hubs`. A phone shows some forty letters,
 * so trailer, day and job come first and the work last.
 */
export function dueInShort({ due, code, trailerId }: DueItem, context: LetterContext): string {
  const today = trailerOf(context, trailerId);
  const job = due.firstJobAtRisk === null ? null : jobOf(today, due.firstJobAtRisk.jobId);
  const before = job === null ? '' : `, before ${job.name} ${onDay(job.startsOn, context.asOf)}`;
  const mark = dueMark(due, context.asOf);
  const when = `${mark.charAt(0).toLowerCase()}${mark.slice(1)}`;
  return `${today.trailer.yardNumber} ${when}${before}: ${checkKindsOf(today).get(due.checkKindId)?.name ?? code}`;
}

function blockedJob({ due, trailerId }: DueItem, context: LetterContext): readonly string[] {
  if (due.firstJobAtRisk === null) return [];
  const job = jobOf(trailerOf(context, trailerId), due.firstJobAtRisk.jobId);
  if (job === null) return [`The first job it blocks starts ${onDay(due.firstJobAtRisk.startsOn, context.asOf)}.`];
  const far = job.distanceKm === null ? '' : ` (${milesOf(job.distanceKm)})`;
  return [`The first job it blocks: ${job.name}, ${onDays(job.startsOn, job.endsOn, context.asOf)}${far}.`];
}

function dueFacts(item: DueItem, context: LetterContext): readonly Fact[] {
  const { work } = checkKindsOf(trailerOf(context, item.trailerId)).get(item.due.checkKindId) ?? {};
  const runs = item.due.yardDays.map(({ from, to }) => onDays(from, to, context.asOf));
  const shown = runs.length > MOST_RUNS ? [...runs.slice(0, MOST_RUNS), 'later'] : runs;
  const together = [...new Set([...(work?.together ?? []), ...item.together])];
  const used = usedWords(item.due);
  return [
    ...(shown.length === 0 ? [] : [{ label: 'In the yard', text: shown.join(', or ') }]),
    ...(work === undefined ? [] : [{ label: 'Takes', text: `${hours(work.hours)} ${PLACE[work.place]}` }]),
    ...(work === undefined || work.parts.length === 0 ? [] : [{ label: 'Bring', text: list(work.parts) }]),
    ...(together.length === 0 ? [] : [{ label: 'Same visit', text: list(together) }]),
    ...(used === null ? [] : [{ label: 'Used', text: used }]),
  ];
}
