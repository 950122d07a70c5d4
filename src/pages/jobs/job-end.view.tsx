import type { Caller } from '../../use-cases/caller.js';
import type { JobScreen } from '../../use-cases/show/show-job.js';
import { Field, Section, type Typed, WrongList } from '../components/field.js';
import { showDates } from '../components/show-quantity.js';
import { Head, Page } from '../page.js';
import { RoadPicks } from '../trailer/trip.view.js';

interface JobEndProps {
  readonly caller: Caller;
  readonly screen: JobScreen;
  readonly typed: Typed;
}

/** Closing a job makes a trip of it: only what went otherwise than booked needs saying. */
export function JobDonePage({ caller, screen, typed }: JobEndProps) {
  const { job } = screen;
  return (
    <Page title={`Done: ${job.name}`} caller={caller} door="Jobs" at="below">
      <Head
        title={`Done: ${job.name}`}
        lede={`Booked ${showDates(job.startsOn, job.endsOn)}. The load is taken as booked; if it was another, mend the trip afterwards.`}
      />
      <form class="form" method="post" action={`/jobs/${job.id}/done`}>
        <WrongList typed={typed} />
        <Section title="How it went">
          <div class="fields">
            <Field typed={typed} name="startedOn" label="Went out" type="date" required />
            <Field typed={typed} name="endedOn" label="Came back" type="date" required />
            <Field typed={typed} name="distance" label="Miles driven" unit="mi" />
          </div>
          <RoadPicks typed={typed} />
          <Field typed={typed} name="note" label="Note" lines={2} wide maxLength={4000} />
        </Section>
        <div class="actions">
          <button class="button button-main" type="submit">
            Record it as a trip
          </button>
          <a class="button" href={`/jobs/${job.id}`}>
            Back without saving
          </a>
        </div>
      </form>
    </Page>
  );
}

export function JobCancelPage({ caller, screen, typed }: JobEndProps) {
  const { job } = screen;
  return (
    <Page title={`Cancel: ${job.name}`} caller={caller} door="Jobs" at="below">
      <Head
        title={`Cancel: ${job.name}`}
        lede="Its miles are no longer counted on, and nobody is reminded for it. What is due stays due."
      />
      <form class="form" method="post" action={`/jobs/${job.id}/cancel`}>
        <WrongList typed={typed} />
        <Section title="Why">
          <Field typed={typed} name="reason" label="Reason, if worth keeping" wide maxLength={200} />
        </Section>
        <div class="actions">
          <button class="button button-stop" type="submit">
            Cancel the job
          </button>
          <a class="button" href={`/jobs/${job.id}`}>
            Keep it
          </a>
        </div>
      </form>
    </Page>
  );
}
