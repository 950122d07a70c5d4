import { type Caller, may } from '../../use-cases/caller.js';
import type { ItemAnswer } from '../../use-cases/notices/answer-item.js';
import type { ItemScreen } from '../../use-cases/notices/show-item.js';
import { Field, Picks, Section, type Typed } from '../components/field.js';
import { showDate } from '../components/show-quantity.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { TrailerFormPage } from '../trailer/trailer-form-page.js';
import { dueWhen, dueWhy, workWords, yardDayWords } from '../words/due-words.js';

export const ANSWERS = ['done', 'already-done', 'later', 'not-mine'] as const satisfies readonly NonNullable<
  ItemAnswer['answer']
>[];

const WORDS: Readonly<Record<(typeof ANSWERS)[number], string>> = {
  done: 'Done today',
  'already-done': 'Already done, on the day below',
  later: 'Later: tell me again on the day below',
  'not-mine': 'Not mine',
};

interface AnswerProps {
  readonly caller: Caller;
  readonly screen: ItemScreen;
  readonly typed: Typed;
}

/** One check that a letter asked for, and what there is to say to it. */
export function AnswerPage({ caller, screen, typed }: AnswerProps) {
  const { trailer, kind, due } = screen;
  const sheet = `/trailers/${trailer.id}/checks/${kind.id}`;
  const told = `${screen.toldTo ?? 'Somebody'} was told on ${showDate(screen.toldOn)}.`;
  if (!screen.open || !may(caller, 'hand')) {
    return (
      <Page title={`${kind.name}, ${trailer.yardNumber}`} caller={caller} door="Notices" at="below">
        <Head
          title={
            <span class="row">
              <YardNumber number={trailer.yardNumber} /> {kind.name}
            </span>
          }
          lede={told}
        />
        <p>
          {screen.open
            ? 'To answer it one must be a hand of this yard or more.'
            : 'It has been dealt with since: there is nothing left to answer.'}
        </p>
        {due !== null && <p>{dueWhen(due, caller.today)}.</p>}
        <p>
          <a href={`/trailers/${trailer.id}#due`}>See the trailer</a>
        </p>
      </Page>
    );
  }
  const why = due && dueWhy(due);
  const yardDays = due && yardDayWords(due, caller.today);
  return (
    <TrailerFormPage
      caller={caller}
      trailer={trailer}
      title={kind.name}
      lede={`${due === null ? '' : `${dueWhen(due, caller.today)}. `}${told}`}
      typed={typed}
      action="/answer"
      submit="Answer"
    >
      <input type="hidden" name="item" value={screen.itemKey} />
      <Section title="What it takes" lede={why ?? undefined}>
        <p class="wide">{workWords(kind)}.</p>
        {yardDays && <p class="wide">{yardDays}.</p>}
        <p class="wide">
          <a href={sheet}>Record it on its sheet</a>, with readings and photos.
        </p>
      </Section>
      <Section title="Your answer" lede="It holds for everybody: nobody is asked again for what one has done.">
        <Picks
          typed={typed}
          name="answer"
          label="Answer"
          kind="radio"
          options={ANSWERS.map((value) => ({ value, label: WORDS[value] }))}
        />
        <Field typed={typed} name="doneOn" label="Done on" type="date" hint="For “already done”" />
        <Field
          typed={typed}
          name="until"
          label="Tell me again on"
          type="date"
          hint={kind.safety ? 'For “later”: no later than the day before its next job' : 'For “later”'}
        />
        <Field typed={typed} name="reason" label="Why it waits, or a note" wide maxLength={200} />
      </Section>
    </TrailerFormPage>
  );
}
