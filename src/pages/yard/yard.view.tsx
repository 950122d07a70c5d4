import { type Caller, may } from '../../use-cases/caller.js';
import type { YardScreen } from '../../use-cases/show/show-yard.js';
import { Choice, Field, Section, type Typed, WrongList } from '../components/field.js';
import { Fact } from '../components/load-table.js';
import { showCount, showNumber, showShare } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { TIME_ZONES } from '../first-run/time-zones.js';
import { Head, Page } from '../page.js';
import { listWords } from '../words/build-words.js';
import { triggerWords } from '../words/due-words.js';

interface YardProps {
  readonly caller: Caller;
  readonly screen: YardScreen;
  readonly typed: Typed;
  readonly said: string | null;
}

const HOURS = Array.from({ length: 24 }, (_, hour) => ({ value: String(hour), label: hourWords(hour) }));

export function YardPage({ caller, screen, typed, said }: YardProps) {
  return (
    <Page title="Yard" caller={caller} door="Yard" said={said}>
      <Head title={screen.yard.name} lede="What this yard has decided for itself." />
      {may(caller, 'owner') ? <SettingsForm typed={typed} /> : <Settings screen={screen} />}
      <CheckKinds caller={caller} screen={screen} />
    </Page>
  );
}

function SettingsForm({ typed }: { readonly typed: Typed }) {
  return (
    <form class="form" method="post" action="/yard">
      <WrongList typed={typed} />
      <Section title="The yard">
        <div class="fields">
          <Field typed={typed} name="name" label="Name" required maxLength={80} />
          <Field typed={typed} name="place" label="Place" maxLength={200} />
          <Choice
            typed={typed}
            name="timeZone"
            label="Time zone"
            options={TIME_ZONES}
            none={null}
            hint="Says when a day begins"
          />
        </div>
      </Section>
      <Section
        title="Mails"
        lede="One mail a person a day, unless a trailer must not be loaded. Nothing but a stop goes out in the quiet hours."
      >
        <div class="fields">
          <Choice typed={typed} name="planHour" label="The day is planned at" options={HOURS} none={null} />
          <Choice typed={typed} name="quietFromHour" label="Quiet from" options={HOURS} none={null} />
          <Choice typed={typed} name="quietToHour" label="Quiet until" options={HOURS} none={null} />
        </div>
      </Section>
      <Section
        title="Where no law decides"
        lede="Each of these is the yard's own choice. Every trailer is judged anew when one changes."
      >
        <div class="fields">
          <Field
            typed={typed}
            name="policy.tireAgeLimitYears"
            label="Tires are replaced after"
            unit="years"
            hint="From the date code. Six is common practice; no federal limit exists"
          />
          <Field
            typed={typed}
            name="policy.weighFirstPercent"
            label="Weigh it first within"
            unit="% of a limit"
            hint="When a weight in the sum was never weighed. Three is our proposal"
          />
          <Field
            typed={typed}
            name="policy.useWindowDays"
            label="Usual use is learned from the last"
            unit="days"
            hint="90 is our choice"
          />
          <Field
            typed={typed}
            name="policy.driftTrips"
            label="Class drift looks back on"
            unit="trips"
            hint="10 is our choice"
          />
          <Field
            typed={typed}
            name="policy.decayIndex"
            label="Decay index of the place"
            inputMode="decimal"
            hint="Scheffer's climate index, 0 to about 140; empty if unknown"
          />
          <Field
            typed={typed}
            name="policy.deckLifeYears"
            label="A deck lasts here, in the open"
            unit="years"
            hint="Your own estimate; empty to have it reckoned"
          />
        </div>
      </Section>
      <div class="actions">
        <button class="button button-main" type="submit">
          Save the settings
        </button>
      </div>
    </form>
  );
}

function Settings({ screen }: { readonly screen: YardScreen }) {
  const { yard } = screen;
  return (
    <dl class="facts sheet">
      <Fact name="Place" value={yard.place} />
      <Fact name="Time zone" value={yard.timeZone.replaceAll('_', ' ')} />
      <Fact name="The day is planned at" value={hourWords(yard.planHour)} />
      <Fact name="Quiet hours" value={`${hourWords(yard.quietFromHour)} to ${hourWords(yard.quietToHour)}`} />
      <Fact name="Tires are replaced after" value={`${showNumber(yard.policy.tireAgeLimitYears, 1)} years`} />
      <Fact name="Weigh it first within" value={`${showShare(yard.policy.weighFirstShare)} of a limit`} />
      <Fact name="Usual use is learned from" value={showCount(yard.policy.useWindowDays, 'day')} />
      <Fact name="Class drift looks back on" value={showCount(yard.policy.driftTrips, 'trip')} />
      <Fact
        name="Decay index of the place"
        value={yard.policy.decayIndex === null ? null : showNumber(yard.policy.decayIndex, 1)}
      />
      <Fact
        name="A deck lasts here, in the open"
        value={yard.policy.deckLifeYears === null ? null : `${showNumber(yard.policy.deckLifeYears, 1)} years`}
      />
    </dl>
  );
}

function CheckKinds({ caller, screen }: Omit<YardProps, 'typed' | 'said'>) {
  const names = new Map(
    screen.people.filter((person) => person.leftOn === null).map((person) => [person.personId, person.name]),
  );
  const mayChange = may(caller, 'owner');
  return (
    <section class="stack-tight" aria-labelledby="checks">
      <h2 class="chalked" id="checks">
        Checks
      </h2>
      <p class="soft">
        Published intervals disagree, so each is a setting that shows where it comes from. The maker's manual of your
        axle, tire and coupler governs.
      </p>
      <Table
        caption={showCount(screen.checkKinds.length, 'check')}
        rows={screen.checkKinds}
        rowKey={(kind) => kind.id}
        columns={[
          {
            label: 'Check',
            lead: true,
            cell: (kind) => (mayChange ? <a href={`/yard/checks/${kind.id}`}>{kind.name}</a> : kind.name),
          },
          {
            label: 'Asked for',
            cell: (kind) =>
              kind.triggers.length === 0 ? 'when somebody asks' : listWords(kind.triggers.map(triggerWords)),
          },
          { label: 'Keeps people safe', cell: (kind) => (kind.safety ? 'yes' : 'no') },
          { label: 'Whose', cell: (kind) => personWords(kind.ownerPersonId, names) },
          { label: 'Stands in', cell: (kind) => personWords(kind.backupPersonId, names) },
          { label: 'Source', cell: (kind) => <span class="small soft">{kind.source}</span> },
        ]}
      />
      {mayChange && (
        <p class="actions">
          <a class="button" href="/yard/checks/new">
            Set up another check
          </a>
        </p>
      )}
    </section>
  );
}

function personWords(personId: string | null, names: ReadonlyMap<string, string>) {
  const name = personId === null ? null : names.get(personId);
  return name ?? <span class="unknown">{personId === null ? 'nobody' : 'somebody who left'}</span>;
}

function hourWords(hour: number): string {
  const twelve = hour % 12 === 0 ? 12 : hour % 12;
  return `${twelve} ${hour < 12 ? 'AM' : 'PM'}`;
}
