import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { ExplainedFit } from '../../rules/explain/explained-fit.js';
import type { Fit, FitParking } from '../../rules/fit/fit.js';
import { reasonWords, remedyWords, verdictSentence } from '../words/fit-words.js';
import type { Names } from '../words/flag-words.js';
import { parkingWords } from '../words/parking-words.js';
import { HowWorkedOut } from './how-worked-out.js';
import { LoadTable } from './load-table.js';
import { VerdictMark } from './marks.js';

interface FitProps {
  readonly fit: Fit;
  readonly names: Names;
  readonly today: CivilDate;
}

/** The short answer for a list: what to do first, and why on asking. */
export function FitBrief({ fit, names, today }: FitProps) {
  return (
    <>
      <p>{verdictSentence(fit)}</p>
      <Remedies fit={fit} names={names} />
      {fit.reasons.length > 0 && (
        <details class="more">
          <summary>Why</summary>
          <Reasons fit={fit} names={names} today={today} />
        </details>
      )}
    </>
  );
}

/** The whole answer: verdict, by how much, why, from which source, and what would make it yes. */
export function FitAnswer({ fit, names, today }: FitProps & { readonly fit: ExplainedFit }) {
  return (
    <div class="stack">
      <div class="row">
        <VerdictMark verdict={fit.verdict} big />
        <p class="strong">{verdictSentence(fit)}</p>
      </div>
      {fit.reasons.length > 0 && (
        <section class="stack-tight" aria-label="Why">
          <h3>Why</h3>
          <Reasons fit={fit} names={names} today={today} />
        </section>
      )}
      {fit.remedies.length > 0 && (
        <section class="stack-tight" aria-label="What would make it yes">
          <h3>What would make it yes</h3>
          <Remedies fit={fit} names={names} />
        </section>
      )}
      {fit.parking !== null && (
        <section class="stack-tight" aria-label="Where to park it">
          <h3>Where to park it</h3>
          <Place parking={fit.parking} names={names} />
        </section>
      )}
      <section class="stack-tight" aria-label="The sum">
        <h3>The sum</h3>
        <LoadTable check={fit.loadCheck} />
        <HowWorkedOut workings={fit.workings} what="the sum" />
      </section>
    </div>
  );
}

export function Place({ parking, names }: { readonly parking: FitParking; readonly names: Names }) {
  const { says, from } = parkingWords(parking, names.machines.get(parking.machineId) ?? 'The machine');
  return (
    <p>
      {says}
      <span class="soft small"> {from}</span>
    </p>
  );
}

/** What would make it yes, in the order to try it. */
export function Remedies({ fit, names }: Omit<FitProps, 'today'>) {
  if (fit.remedies.length === 0) return null;
  return (
    <ul class="chores">
      {fit.remedies.map((remedy) => {
        const words = remedyWords(remedy, names);
        return <li key={words}>{words}</li>;
      })}
    </ul>
  );
}

/** Why the answer is not plain go, each with its source. */
export function Reasons({ fit, names, today }: FitProps) {
  return (
    <ul class="lines">
      {fit.reasons.map((reason) => {
        const { says, from } = reasonWords(reason, names, today);
        return (
          <li key={says}>
            {says}
            {from && <span class="soft small"> {from}</span>}
          </li>
        );
      })}
    </ul>
  );
}
