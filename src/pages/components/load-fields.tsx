import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { BASIS_WORDS, optionsOf, REMEDY_WORDS } from '../words/build-words.js';
import { Choice, Field, Section, type Typed, typedText } from './field.js';
import { showMass } from './show-quantity.js';

interface LoadFieldsProps {
  readonly typed: Typed;
  readonly machines: TrailerFormScreen['machines'];
}

const SPARE_ROWS = 3;
const TICKET_AXLES = [0, 1, 2];

/** Machine, what else is on the deck, where it sits, and what a scale said of it. */
export function LoadFields({ typed, machines }: LoadFieldsProps) {
  const ticketGiven = ['gross', 'tongue', 'axle.0', 'axle.1', 'axle.2'].some(
    (name) => typedText(typed, `load.scale.${name}`) !== '',
  );
  const wrongTicket = typed.problems.some(({ field }) => field.startsWith('load.scale'));
  return (
    <>
      <Section
        title="Machine"
        lede="It comes along with the weight on file. If it goes heavier or lighter this time, say so."
      >
        <div class="fields">
          <Choice
            typed={typed}
            name="machineId"
            label="Machine"
            none="No machine, or not listed"
            wide
            options={machines.map((machine) => ({
              value: machine.id,
              label: `${machine.name} (${machine.massKg === null ? 'weight unknown' : `${showMass(machine.massKg)}, ${machine.basis}`})`,
            }))}
          />
          <Field
            typed={typed}
            name="machineMass"
            label="Its weight this time"
            unit="lb"
            hint="Leave empty for the weight on file"
          />
          <Choice
            typed={typed}
            name="machineBasis"
            label="How that weight is known"
            options={optionsOf(BASIS_WORDS).filter(({ value }) => value !== 'stated')}
            none="Stated"
          />
        </div>
      </Section>
      <CargoFields typed={typed} />
      <Section
        title="Where it sits"
        lede="Needed to work out the tongue and the axles. Leave it empty if nobody knows yet."
      >
        <div class="fields">
          <Field
            typed={typed}
            name="load.balancePoint"
            label="Balance point behind the coupler"
            unit="in, or ft"
            hint="Of everything on the deck together"
          />
        </div>
        <details class="fold" open={ticketGiven || wrongTicket}>
          <summary>
            <span class="strong">Scale ticket of the loaded trailer</span>
          </summary>
          <div class="fields">
            <Field typed={typed} name="load.scale.gross" label="Whole trailer" unit="lb" hint="Hitch weight included" />
            <Field typed={typed} name="load.scale.tongue" label="On the tongue" unit="lb" />
            {TICKET_AXLES.map((at) => (
              <Field key={at} typed={typed} name={`load.scale.axle.${at}`} label={`On axle ${at + 1}`} unit="lb" />
            ))}
          </div>
        </details>
      </Section>
    </>
  );
}

function CargoFields({ typed }: { readonly typed: Typed }) {
  const filled = Object.keys(typed.values).reduce((most, name) => {
    const row = /^load\.cargo\.(\d+)\.name$/.exec(name);
    return row && typedText(typed, name) !== '' ? Math.max(most, Number(row[1]) + 1) : most;
  }, 0);
  const rows = Array.from({ length: filled + SPARE_ROWS }, (_, row) => row);
  return (
    <Section
      title="What else is on the deck"
      lede="Buckets, grapples, chains, fuel, mud. Weight drifts up: put down what really rides along."
    >
      {rows.map((row) => (
        <fieldset class="cargo-row" key={row}>
          <legend class="hidden-words">Cargo line {row + 1}</legend>
          <div class="fields">
            <Field typed={typed} name={`load.cargo.${row}.name`} label="What" maxLength={80} />
            <Field typed={typed} name={`load.cargo.${row}.mass`} label="Weight" unit="lb" />
            <Choice
              typed={typed}
              name={`load.cargo.${row}.basis`}
              label="Known how"
              options={optionsOf(BASIS_WORDS).filter(({ value }) => value !== 'stated')}
              none="Stated"
            />
            <Choice
              typed={typed}
              name={`load.cargo.${row}.remedy`}
              label="Could it be spared?"
              options={optionsOf(REMEDY_WORDS)}
              none="No"
            />
          </div>
        </fieldset>
      ))}
    </Section>
  );
}
