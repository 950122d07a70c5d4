import type { Fit, FitRemedy } from '../../rules/fit/fit.js';
import type { LetterItem } from '../../rules/notice/plan-letters.js';
import { duePhrase } from '../words/due-words.js';
import { reasonWords, remedyWords, VERDICT_WORDS } from '../words/fit-words.js';
import { milesOf, onDay, onDays, pounds } from '../words/show.js';
import { checkKindsOf, jobOf, type LetterContext, trailerName, trailerOf } from './letter-context.js';
import type { Entry, Tone } from './paper.js';

type GateItem = Extract<LetterItem, { kind: 'gate-brief' }>;

const TONE: Readonly<Record<Fit['verdict'], Tone>> = {
  go: 'plain',
  'go-after': 'first',
  'weigh-first': 'first',
  'cannot-say': 'first',
  'no-go': 'stop',
};

/** One job and its trailer: the answer, why, what to do first, and what falls due while it is away. */
export function gateEntry(item: GateItem, context: LetterContext): Entry {
  const { asOf } = context;
  const today = trailerOf(context, item.trailerId);
  const job = jobOf(today, item.jobId);
  const names = { asOf, checkKinds: checkKindsOf(today) };
  const { verdict, reasons, loadCheck } = item.fit;
  const when = job === null ? '' : `${job.name}, ${onDays(job.startsOn, job.endsOn, asOf)}: `;
  return {
    tone: TONE[verdict],
    title: `${when}${trailerName(today.trailer)}`,
    mark: VERDICT_WORDS[verdict],
    says: [
      ...reasons.map((reason) => reasonWords(reason, names)),
      ...(reasons.length === 0 ? ['It fits, and nothing has to be done first.'] : []),
    ],
    todo: inOrder(item.fit.remedies).map((remedy) => remedyWords(remedy, names)),
    facts: [
      ...(loadCheck.grossKg === null ? [] : [{ label: 'Loaded', text: `${pounds(loadCheck.grossKg)} in all` }]),
      ...(job?.distanceKm ? [{ label: 'Way', text: milesOf(job.distanceKm) }] : []),
      ...(job?.towVehicle ? [{ label: 'Pulled by', text: job.towVehicle.name }] : []),
      ...(job?.driver ? [{ label: 'Driver', text: job.driver.name }] : []),
      ...(item.dueWhileAway.length === 0
        ? []
        : [
            {
              label: 'Due while away',
              text: item.dueWhileAway
                .map((due) => `${names.checkKinds.get(due.checkKindId)?.name ?? due.code} (${duePhrase(due, asOf)})`)
                .join(', '),
            },
          ]),
    ],
    link: { text: 'Open the job', url: `${context.baseUrl}/jobs/${item.jobId}` },
  };
}

/** `T-07 before Mon 9 Jun's Hollow Rd job: fix first`. */
export function gateInShort(item: GateItem, context: LetterContext): string {
  const today = trailerOf(context, item.trailerId);
  const job = jobOf(today, item.jobId);
  const answer = VERDICT_WORDS[item.fit.verdict].toLowerCase();
  const { yardNumber } = today.trailer;
  return job === null
    ? `${yardNumber}: ${answer}`
    : `${yardNumber} to ${job.name} ${onDay(job.startsOn, context.asOf)}: ${answer}`;
}

/** Remedies come in the order to try them; nothing is said twice. */
function inOrder(remedies: readonly FitRemedy[]): readonly FitRemedy[] {
  const said = new Set<string>();
  return remedies.filter((remedy) => {
    const key = JSON.stringify(remedy);
    return said.has(key) ? false : said.add(key);
  });
}
