import type { Caller } from '../../use-cases/caller.js';
import type { LoadCheckScreen } from '../../use-cases/show/show-load-check.js';
import { Choice, Field, Section, type Typed, typedText, WrongList } from '../components/field.js';
import { Island } from '../components/island.js';
import { showMass } from '../components/show-quantity.js';
import { YardNumber } from '../components/yard-number.js';
import type { LoadCheckData } from '../islands/load-check.js';
import { Head, Page } from '../page.js';
import type { AnsweredLoad } from './asked-load.js';
import { LoadBench } from './load-bench.js';
import { TICKET_AXLES } from './read-ticket.js';

interface LoadPageProps {
  readonly caller: Caller;
  readonly screen: LoadCheckScreen;
  readonly typed: Typed;
  readonly answered: AnsweredLoad | null;
}

/** What this load does to this trailer where it stands. Asks, answers, and keeps nothing. */
export function LoadPage({ caller, screen, typed, answered }: LoadPageProps) {
  const { facts } = screen;
  const number = facts?.trailer.yardNumber ?? '';
  return (
    <Page title="Load check" caller={caller} door="Load check">
      <Head
        title="Load check"
        lede="Put a machine on a trailer and see every limit, wherever it stands. Nothing is kept."
      >
        <a class="button" href={`/fit${number === '' ? '' : `?trailer=${encodeURIComponent(number)}`}`}>
          For a day and a driver: Check fit
        </a>
      </Head>
      {answered !== null && facts !== null && (
        <section class="sheet" aria-labelledby="answer" id="the-answer">
          <h2 class="row" id="answer">
            <YardNumber number={number} id={facts.trailer.id} /> {answered.asked.name}
          </h2>
          <Island
            name="load-check"
            data={
              {
                chosen: { facts, machine: screen.machine, towVehicle: screen.towVehicle },
                yardNumber: number,
                today: caller.today,
              } satisfies LoadCheckData
            }
          >
            <LoadBench yardNumber={number} answered={answered} today={caller.today} />
          </Island>
        </section>
      )}
      <AskForm screen={screen} typed={typed} isAnswered={answered !== null} />
    </Page>
  );
}

interface AskProps {
  readonly screen: LoadCheckScreen;
  readonly typed: Typed;
  readonly isAnswered: boolean;
}

/** Everything a load check rests on, in one form that an address can carry: it can be sent to somebody. */
function AskForm({ screen, typed, isAnswered }: AskProps) {
  const ticketGiven = ['gross', 'tongue', 'axle.0', 'axle.1', 'axle.2', 'moved'].some(
    (name) => typedText(typed, name) !== '' || typed.problems.some(({ field }) => field === name),
  );
  return (
    <form class="form" method="get" action="/load" data-load-check="">
      <WrongList typed={typed} />
      <Section title="Trailer and load">
        <div class="fields">
          <Field
            typed={typed}
            name="trailer"
            label="Trailer"
            required
            list={screen.trailerNumbers}
            maxLength={24}
            hint="Its number"
          />
          <Choice
            typed={typed}
            name="machine"
            label="Machine"
            none="Not listed: type the weight"
            options={screen.machines.map((machine) => ({
              value: machine.id,
              label: `${machine.name} (${machine.massKg === null ? 'weight unknown' : `${showMass(machine.massKg)}, ${machine.basis}`})`,
            }))}
          />
          <Field typed={typed} name="mass" label="Its weight this time" unit="lb" hint="Empty: the weight on file" />
          <Choice
            typed={typed}
            name="basis"
            label="How that weight is known"
            options={[{ value: 'weighed', label: 'Weighed' }]}
            none="Stated or guessed"
          />
          <Field
            typed={typed}
            name="at"
            label="Balances behind the coupler"
            unit="in, or ft"
            hint="The machine alone. Empty: its best place"
          />
          <Field
            typed={typed}
            name="other"
            label="What else is on the deck"
            unit="lb"
            hint="Buckets, chains, mud, together"
          />
          <Field
            typed={typed}
            name="otherAt"
            label="That balances behind the coupler"
            unit="in, or ft"
            hint="Empty: it rides on the machine"
          />
        </div>
      </Section>
      <Section title="How it is towed">
        <div class="fields">
          <Choice
            typed={typed}
            name="tow"
            label="Tow vehicle"
            options={screen.towVehicles.map(({ id, name }) => ({ value: id, label: name }))}
            none="Not known yet"
          />
          <Field
            typed={typed}
            name="hitch"
            label="Coupler height, hitched"
            unit="in"
            hint="Ground to coupler, loaded: how level it rides"
          />
          <Field
            typed={typed}
            name="psi"
            label="Cold pressure of every tire"
            unit="psi"
            hint="Empty: as last found, else the plate's"
          />
        </div>
      </Section>
      <details class="fold" open={ticketGiven}>
        <summary>
          <span class="strong">It stands on a scale: enter the ticket</span>
        </summary>
        <div class="fields">
          <Field typed={typed} name="gross" label="Whole trailer" unit="lb" hint="Hitch weight included" />
          <Field typed={typed} name="tongue" label="On the tongue" unit="lb" />
          {TICKET_AXLES.map((axle) => (
            <Field key={axle} typed={typed} name={`axle.${axle}`} label={`On axle ${axle + 1}`} unit="lb" />
          ))}
          <Field
            typed={typed}
            name="moved"
            label="Moved forward since"
            unit="in"
            hint="Back with a minus. The machine's own weight is needed"
          />
        </div>
      </details>
      <div class="actions">
        <button class="button button-main" type="submit">
          {isAnswered ? 'Check again' : 'Check the load'}
        </button>
      </div>
    </form>
  );
}
