import type { Fit, FitReason } from '../../rules/fit/fit.js';
import type { LetterItem } from '../../rules/notice/plan-letters.js';
import { duePhrase } from '../words/due-words.js';
import { type FitNames, reasonWords, remedyWords, VERDICT_WORDS } from '../words/fit-words.js';
import { parkingWords } from '../words/parking-words.js';
import { milesOf, onDay, onDays, pounds } from '../words/show.js';
import { unknownWords } from '../words/unknown-words.js';
import { checkKindsOf, jobOf, type LetterContext, trailerName, trailerOf } from './letter-context.js';
import type { Entry, Fact, Tone } from './paper.js';

type GateItem = Extract<LetterItem, { kind: 'gate-brief' }>;
type Unknown = Extract<FitReason, { kind: 'unknown' }>;

const TONE: Readonly<Record<Fit['verdict'], Tone>> = {
  go: 'plain',
  'go-after': 'first',
  'weigh-first': 'first',
  'cannot-say': 'first',
  'no-go': 'stop',
};

/** One job and its trailer: the answer, why, what to do first, and what falls due while it is away. */
export function gateEntry(item: GateItem, context: LetterContext): Entry {
  const today = trailerOf(context, item.trailerId);
  const job = jobOf(today, item.jobId);
  const names: FitNames = { asOf: context.asOf, checkKinds: checkKindsOf(today) };
  const { verdict, reasons, remedies } = item.fit;
  const when = job === null ? '' : `${job.name}, ${onDays(job.startsOn, job.endsOn, context.asOf)}: `;
  const known = reasons.filter((reason) => reason.kind !== 'unknown');
  const said = known.map((reason) => reasonWords(reason, names));
  return {
    tone: TONE[verdict],
    title: `${when}${trailerName(today.trailer)}`,
    mark: VERDICT_WORDS[verdict],
    says:
      verdict === 'go'
        ? [said.length === 0 ? 'It fits, and nothing has to be done first.' : 'It fits.', ...said]
        : said,
    todo: remedies.map((remedy) => remedyWords(remedy, names)),
    facts: gateFacts(item, context, names),
    link: { text: 'Open the job', url: `${context.baseUrl}/jobs/${item.jobId}` },
  };
}

/** `T-07 to Hollow Rd Mon 9 Jun: fix first`. */
export function gateInShort(item: GateItem, context: LetterContext): string {
  const today = trailerOf(context, item.trailerId);
  const job = jobOf(today, item.jobId);
  const answer = VERDICT_WORDS[item.fit.verdict].toLowerCase();
  const { yardNumber } = today.trailer;
  return job === null
    ? `${yardNumber}: ${answer}`
    : `${yardNumber} to ${job.name} ${onDay(job.startsOn, context.asOf)}: ${answer}`;
}

function gateFacts(item: GateItem, context: LetterContext, names: FitNames): readonly Fact[] {
  const job = jobOf(trailerOf(context, item.trailerId), item.jobId);
  const { loadCheck, reasons } = item.fit;
  const away = item.dueWhileAway.map(
    (due) => `${names.checkKinds.get(due.checkKindId)?.name ?? due.code} (${duePhrase(due, context.asOf)})`,
  );
  const unknowns = reasons.filter((reason): reason is Unknown => reason.kind === 'unknown');
  const facts: readonly (readonly [label: string, text: string | null | undefined])[] = [
    ['Loaded', loadCheck.grossKg === null ? null : `${pounds(loadCheck.grossKg)} in all`],
    ['Park it', item.fit.parking === null ? null : parkingWords(item.fit.parking)],
    ['Way', job === null || job.distanceKm === null ? null : milesOf(job.distanceKm)],
    ['Pulled by', job?.towVehicle?.name],
    ['Driver', job?.driver?.name],
    ['Due while away', away.length === 0 ? null : away.join(', ')],
    ['Not known', unknowns.length === 0 ? null : inOneGo(unknowns)],
  ];
  return facts.flatMap(([label, text]) => (text ? [{ label, text }] : []));
}

/** One missing fact often stops several sums; it is named once. */
function inOneGo(unknowns: readonly Unknown[]): string {
  const lacking = [...new Set(unknowns.map(({ lacks }) => lacks))];
  return lacking
    .map((lacks) =>
      unknownWords(
        lacks,
        unknowns.filter((one) => one.lacks === lacks).map(({ stops }) => stops),
      ),
    )
    .join(' ');
}
