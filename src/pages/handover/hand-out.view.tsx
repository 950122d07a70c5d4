import { type Caller, may } from '../../use-cases/caller.js';
import type { HandoverFormScreen } from '../../use-cases/show/show-handover-form.js';
import { Caution } from '../components/caution.js';
import { Choice, Field, Picks, Section, SendId, type Typed, typedText } from '../components/field.js';
import { VerdictMark } from '../components/marks.js';
import { showDates, showMass } from '../components/show-quantity.js';
import { TrailerFormPage } from '../trailer/trailer-form-page.js';
import { ballWords, PLUG_WORDS } from '../words/handover-words.js';
import { type LineBefore, LookOver } from './look-over.js';
import { SignatureFields } from './signature.js';

interface HandOutProps {
  readonly caller: Caller;
  readonly screen: HandoverFormScreen;
  readonly typed: Typed;
}

/** At the counter and once round the trailer: who takes it, on what ball and plug, and how it goes out. */
export function HandOutPage({ caller, screen, typed }: HandOutProps) {
  const { trailer, facts, outNow, job, verdict } = screen;
  const hold = facts.holds.find(({ liftedOn }) => liftedOn === null);
  return (
    <TrailerFormPage
      caller={caller}
      trailer={trailer}
      title="Hand it out"
      typed={typed}
      action={`/trailers/${trailer.id}/hand-out`}
      submit="Hand it out"
      multipart
    >
      <SendId typed={typed} />
      {outNow !== null && (
        <p class="said">
          It is with {outNow.customer}. <a href={`/trailers/${trailer.id}/take-back`}>Take it back</a> first.
        </p>
      )}
      {hold !== undefined && (
        <p class="said">
          It is on hold: {hold.reason}. It must not go out.{' '}
          {may(caller, 'shop') && <a href={`/trailers/${trailer.id}/holds/${hold.id}/lift`}>Lift the hold</a>}
        </p>
      )}
      <Section title="Who takes it">
        {verdict !== null && job !== null && (
          <p class="row">
            <VerdictMark verdict={verdict} /> <a href={`/jobs/${job.id}`}>{job.name}</a>
          </p>
        )}
        <div class="fields">
          {screen.jobs.length > 0 && (
            <Choice
              typed={typed}
              name="jobId"
              label="For which job"
              none="None that is booked"
              options={screen.jobs.map(({ id, name, startsOn, endsOn }) => ({
                value: id,
                label: `${name}, ${showDates(startsOn, endsOn)}`,
              }))}
            />
          )}
          <Field
            typed={typed}
            name="customer"
            label="Customer"
            maxLength={80}
            hint={job?.customer ? `Empty: ${job.customer}` : undefined}
          />
          <Field typed={typed} name="on" label="Goes out on" type="date" required />
        </div>
      </Section>
      <Coupling screen={screen} typed={typed} />
      <Section
        title="Look it over"
        lede="Every line starts as sound: change what is not. What nobody sees going out can be charged to nobody."
      >
        <LookOver typed={typed} things={screen.things} before={linesBefore(screen)} />
      </Section>
      <Section title="Sign">
        <SignatureFields typed={typed} why="They took it as it is described here." />
      </Section>
      <Caution>
        Watch it coupled: latch closed and pinned, chains crossed, breakaway hooked on, lamps and brakes tried.
      </Caution>
    </TrailerFormPage>
  );
}

const BALLS = ['2-5/16', '2', '1-7/8', '3'];

function Coupling({ screen, typed }: Omit<HandOutProps, 'caller'>) {
  const hitch = screen.build?.hitch ?? null;
  if (hitch?.kind === 'pintle') {
    return (
      <Section title="Coupling up" lede="It takes a pintle, so no ball is asked for.">
        <Plug typed={typed} />
      </Section>
    );
  }
  const takes = hitch?.ballSizeM
    ? `This coupler takes ${ballWords(hitch.ballSizeM)}`
    : 'Its own ball size is not on file';
  const weighs = screen.grossKg === null ? '' : `, and it will weigh up to ${showMass(screen.grossKg)} loaded`;
  const isSwapped = ['size', 'rating'].some((name) => typedText(typed, `hitch.swappedTo.${name}`) !== '');
  const isWrong = typed.problems.some(({ field }) => field.startsWith('hitch.'));
  return (
    <Section title="Coupling up" lede={`${takes}${weighs}. Read what is stamped on top of the customer's ball.`}>
      <div class="fields">
        <Field
          typed={typed}
          name="hitch.ball.size"
          label="Customer's ball, size"
          unit="in"
          list={BALLS}
          maxLength={12}
          inputMode="text"
        />
        <Field typed={typed} name="hitch.ball.rating" label="Customer's ball, rating" unit="lb" maxLength={12} />
      </div>
      <details open={isSwapped || isWrong}>
        <summary>We put our own ball on their mount</summary>
        <div class="fields">
          <Field
            typed={typed}
            name="hitch.swappedTo.size"
            label="Our ball, size"
            unit="in"
            list={BALLS}
            maxLength={12}
            inputMode="text"
          />
          <Field typed={typed} name="hitch.swappedTo.rating" label="Our ball, rating" unit="lb" maxLength={12} />
        </div>
        <p class="soft small">Theirs goes back on when the trailer does: the return asks for it.</p>
      </details>
      <Plug typed={typed} />
    </Section>
  );
}

function Plug({ typed }: { readonly typed: Typed }) {
  return (
    <Picks
      typed={typed}
      name="hitch.plug"
      label="Plugged in, what works?"
      kind="radio"
      options={[
        ...(['lamps-and-brakes', 'lamps-only', 'nothing'] as const).map((value) => ({
          value,
          label: PLUG_WORDS[value],
        })),
        { value: '', label: 'Not tried' },
      ]}
    />
  );
}

function linesBefore({ things, facts }: HandoverFormScreen): readonly LineBefore[] {
  return things.map(({ thing, position }) => {
    const place = thing === 'spare' ? 'spare' : thing === 'tire' ? position : null;
    const part = facts.parts.find(
      (one) => one.kind === 'tire' && one.position === place && one.removedOn === null && place !== null,
    );
    return { seen: null, onFile: part?.tire ?? null };
  });
}
