import type { ExplainedFit } from '../../rules/explain/explained-fit.js';
import type { YardRanking } from '../../use-cases/assessments/rank-yard.js';
import type { Caller } from '../../use-cases/caller.js';
import type { ChoicesScreen } from '../../use-cases/show/show-choices.js';
import { Caution } from '../components/caution.js';
import { Section, type Typed, typedText, WrongList } from '../components/field.js';
import { FitAnswer } from '../components/fit-answer.js';
import { TowFields, WhenFields } from '../components/haul-fields.js';
import { LoadFields } from '../components/load-fields.js';
import { Ranking } from '../components/ranking.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import type { Names } from '../words/flag-words.js';

/** For the trailer named, or from the whole yard; null before anything was asked. */
export type FitPageAnswer = { readonly fit: ExplainedFit } | { readonly ranking: YardRanking } | null;

interface FitPageProps {
  readonly caller: Caller;
  readonly choices: ChoicesScreen;
  readonly typed: Typed;
  readonly names: Names;
  readonly answer: FitPageAnswer;
}

/** The same trailer and machine in the load check, where they can be moved. */
function loadCheckPath(typed: Typed): string {
  const asked = new URLSearchParams({
    trailer: typedText(typed, 'trailerNumber'),
    machine: typedText(typed, 'machineId'),
    mass: typedText(typed, 'machineMass'),
    at: typedText(typed, 'machineFromCoupler'),
    tow: typedText(typed, 'towVehicleId'),
    hitch: typedText(typed, 'load.hitchHeight'),
  });
  for (const [name, value] of [...asked]) if (value === '') asked.delete(name);
  return asked.size === 0 ? '/load' : `/load?${asked}`;
}

/** Can this trailer take this machine? Asks, answers, and books nothing. */
export function FitPage({ caller, choices, typed, names, answer }: FitPageProps) {
  return (
    <Page title="Check fit" caller={caller} door="Check fit">
      <Head
        title="Check fit"
        lede="Can this trailer take this machine, or which one could? One answer, by how much, why, and what would make it yes. Nothing is booked."
      >
        <a class="button" href={loadCheckPath(typed)}>
          Drag it along the deck: Load check
        </a>
      </Head>
      {answer && 'ranking' in answer && (
        <section class="stack" aria-labelledby="answer" id="the-answer">
          <h2 class="chalked" id="answer">
            Which trailers could take it?
          </h2>
          <Ranking ranking={answer.ranking} names={names} today={caller.today} jobId={null} />
          <Caution />
        </section>
      )}
      {answer && 'fit' in answer && (
        <section class="sheet" aria-labelledby="answer" id="the-answer">
          <h2 class="row" id="answer">
            <YardNumber number={typedText(typed, 'trailerNumber').toUpperCase()} id={choices.trailerId ?? undefined} />{' '}
            The answer
          </h2>
          <FitAnswer fit={answer.fit} names={names} today={caller.today} />
          <Caution />
        </section>
      )}
      <form class="form" method="post" action="/fit">
        <WrongList typed={typed} />
        <Section title="Which trailer and when">
          <WhenFields typed={typed} choices={choices} withoutTrailer="empty: which trailers could?" />
        </Section>
        <LoadFields typed={typed} machines={choices.machines} />
        <TowFields typed={typed} choices={choices} />
        <div class="actions">
          <button class="button button-main" type="submit">
            {answer ? 'Ask again' : 'Can it?'}
          </button>
          <button class="button" type="submit" name="ask" value="yard">
            Which trailers could?
          </button>
        </div>
      </form>
    </Page>
  );
}
