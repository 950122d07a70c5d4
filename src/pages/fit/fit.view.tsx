import type { ExplainedFit } from '../../rules/explain/explained-fit.js';
import type { Caller } from '../../use-cases/caller.js';
import type { ChoicesScreen } from '../../use-cases/show/show-choices.js';
import { Caution } from '../components/caution.js';
import { Section, type Typed, typedText, WrongList } from '../components/field.js';
import { FitAnswer } from '../components/fit-answer.js';
import { TowFields, WhenFields } from '../components/haul-fields.js';
import { LoadFields } from '../components/load-fields.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import type { Names } from '../words/flag-words.js';

interface FitPageProps {
  readonly caller: Caller;
  readonly choices: ChoicesScreen;
  readonly typed: Typed;
  readonly answer: { readonly fit: ExplainedFit; readonly names: Names } | null;
}

/** Can this trailer take this machine? Asks, answers, and books nothing. */
export function FitPage({ caller, choices, typed, answer }: FitPageProps) {
  return (
    <Page title="Check fit" caller={caller} door="Check fit">
      <Head
        title="Check fit"
        lede="Can this trailer take this machine? One answer, by how much, why, and what would make it yes. Nothing is booked."
      />
      {answer && (
        <section class="sheet" aria-labelledby="answer" id="the-answer">
          <h2 class="row" id="answer">
            <YardNumber number={typedText(typed, 'trailerNumber').toUpperCase()} id={choices.trailerId ?? undefined} />{' '}
            The answer
          </h2>
          <FitAnswer fit={answer.fit} names={answer.names} today={caller.today} />
          <Caution />
        </section>
      )}
      <form class="form" method="post" action="/fit">
        <WrongList typed={typed} />
        <Section title="Which trailer and when">
          <WhenFields typed={typed} choices={choices} trailerNeeded />
        </Section>
        <LoadFields typed={typed} machines={choices.machines} />
        <TowFields typed={typed} choices={choices} />
        <div class="actions">
          <button class="button button-main" type="submit">
            {answer ? 'Ask again' : 'Can it?'}
          </button>
        </div>
      </form>
    </Page>
  );
}
