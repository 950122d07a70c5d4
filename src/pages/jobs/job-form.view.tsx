import type { Caller } from '../../use-cases/caller.js';
import type { ChoicesScreen } from '../../use-cases/show/show-choices.js';
import { Caution } from '../components/caution.js';
import { Choice, Field, Section, SendId, type Typed, WrongList } from '../components/field.js';
import { TowFields, WhenFields } from '../components/haul-fields.js';
import { LoadFields } from '../components/load-fields.js';
import { Head, Page } from '../page.js';

interface JobFormProps {
  readonly caller: Caller;
  readonly choices: ChoicesScreen;
  readonly typed: Typed;
  /** The job that is changed; null for a new one. */
  readonly jobId: string | null;
}

export function JobFormPage({ caller, choices, typed, jobId }: JobFormProps) {
  const title = jobId === null ? 'Book a job' : 'Change the job';
  return (
    <Page title={title} caller={caller} door="Jobs" at="below">
      <Head
        title={title}
        lede="A job that its trailer may not take is booked all the same; the answer says why not and what would make it yes."
      />
      <form class="form" method="post" action={jobId === null ? '/jobs/new' : `/jobs/${jobId}/change`}>
        <WrongList typed={typed} />
        {jobId === null && <SendId typed={typed} />}
        <Section title="The job">
          <div class="fields">
            <Field
              typed={typed}
              name="name"
              label="What it is called"
              required
              maxLength={80}
              hint="Such as Hollow Rd culvert"
            />
          </div>
          <WhenFields typed={typed} choices={choices} withoutTrailer="empty while none is picked" />
          <div class="fields">
            <Choice
              typed={typed}
              name="work"
              label="Whose work"
              none={null}
              options={[
                { value: 'own', label: 'Own work' },
                { value: 'hire', label: 'Hired out' },
              ]}
            />
            <Field typed={typed} name="customer" label="Customer" maxLength={80} />
          </div>
        </Section>
        <LoadFields typed={typed} machines={choices.machines} />
        <TowFields typed={typed} choices={choices} />
        <Section title="Note">
          <Field typed={typed} name="note" label="Anything worth knowing" lines={2} wide maxLength={4000} />
        </Section>
        <Caution />
        <div class="actions">
          <button class="button button-main" type="submit">
            {jobId === null ? 'Book the job' : 'Save the change'}
          </button>
          <a class="button" href={jobId === null ? '/jobs' : `/jobs/${jobId}`}>
            Back without saving
          </a>
        </div>
      </form>
    </Page>
  );
}
