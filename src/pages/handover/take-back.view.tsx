import type { Handover } from '../../rules/facts/handover.js';
import type { Caller } from '../../use-cases/caller.js';
import type { HandoverFormScreen } from '../../use-cases/show/show-handover-form.js';
import { Caution } from '../components/caution.js';
import { Field, Picks, Section, SendId, type Typed } from '../components/field.js';
import { showDate } from '../components/show-quantity.js';
import { TrailerFormPage } from '../trailer/trailer-form-page.js';
import { ballWords } from '../words/handover-words.js';
import { type LineBefore, LookOver } from './look-over.js';
import { SignatureFields } from './signature.js';

interface TakeBackProps {
  readonly caller: Caller;
  readonly screen: HandoverFormScreen;
  readonly out: Handover;
  readonly typed: Typed;
}

/** The same round as on the way out, with how each thing went out beside it. */
export function TakeBackPage({ caller, screen, out, typed }: TakeBackProps) {
  const { trailer, things } = screen;
  const before: readonly LineBefore[] = things.map(({ thing, position }) => ({
    seen: out.seen.find((one) => one.thing === thing && one.position === position) ?? null,
    onFile: null,
  }));
  const swapped = out.hitch?.swappedTo ?? null;
  return (
    <TrailerFormPage
      caller={caller}
      trailer={trailer}
      title="Take it back"
      lede={`From ${out.customer}, who took it on ${showDate(out.on)}.`}
      typed={typed}
      action={`/trailers/${trailer.id}/take-back`}
      submit="Take it back"
      multipart
    >
      <SendId typed={typed} />
      <Section title="When">
        <Field typed={typed} name="on" label="Came back on" type="date" required />
      </Section>
      {swapped !== null && (
        <Section title="Their own ball" lede={theirBall(out)}>
          <Picks
            typed={typed}
            name="ballBack"
            label="Is it back on their mount, and tight?"
            kind="radio"
            options={[
              { value: 'yes', label: `Yes, ${caller.name} saw it` },
              { value: '', label: 'No' },
            ]}
          />
        </Section>
      )}
      <Section
        title="Look it over"
        lede="Every line starts as sound: change what is not. Read each tire's load range and date code: a swapped tire tells itself by them."
      >
        <LookOver typed={typed} things={things} before={before} />
      </Section>
      <Section title="Sign">
        <SignatureFields
          typed={typed}
          why={swapped === null ? 'They saw what is written here.' : 'Needed when their own ball does not go back on.'}
        />
      </Section>
      <Caution>
        What is bent, broken, missing or stiff keeps it in until somebody has mended it or answers for it.
      </Caution>
    </TrailerFormPage>
  );
}

function theirBall({ hitch }: Handover): string {
  const sizeM = hitch?.ball.sizeM ?? null;
  const what = sizeM === null ? 'Their own ball' : `Their own ${ballWords(sizeM)} ball`;
  return `${what} was taken off when it went out, and ours put on. Ours comes off now.`;
}
