import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { BASIS_WORDS, optionsOf, REMEDY_WORDS, TIE_DOWN_WORDS } from '../words/build-words.js';
import { Choice, Field, Picks, Section, type Typed, typedText } from './field.js';
import { showMass } from './show-quantity.js';

interface LoadFieldsProps {
  readonly typed: Typed;
  readonly machines: TrailerFormScreen['machines'];
}

const SPARE_ROWS = 3;
const TIE_DOWN_ROWS = 2;
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
          <Field
            typed={typed}
            name="machineFromCoupler"
            label="Its balance point behind the coupler"
            unit="in, or ft"
            hint="Of the machine alone, if known"
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
          <Field
            typed={typed}
            name="load.offCentre"
            label="Off the middle line"
            unit="in"
            hint="To the right; to the left with a minus"
          />
          <Field
            typed={typed}
            name="load.hitchHeight"
            label="Coupler height, hitched"
            unit="in"
            hint="Ground to coupler, loaded"
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
      <TieDownFields typed={typed} />
    </>
  );
}

function CargoFields({ typed }: { readonly typed: Typed }) {
  const filled = rowsTyped(typed, /^load\.cargo\.(\d+)\.name$/);
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
            <Field
              typed={typed}
              name={`load.cargo.${row}.fromCoupler`}
              label="Balances behind the coupler"
              unit="in, or ft"
            />
          </div>
        </fieldset>
      ))}
    </Section>
  );
}

/** How many of it, how strong, which way; or that there is none, which is not the same as nobody having said. */
function TieDownFields({ typed }: { readonly typed: Typed }) {
  const filled = rowsTyped(typed, /^load\.tieDowns\.(\d+)\.(?:count|workingLoad)$/);
  const rows = Array.from({ length: Math.max(TIE_DOWN_ROWS, filled + 1) }, (_, row) => row);
  return (
    <Section
      title="Tie-downs"
      lede="A line for each kind. The limit is that of the weakest part, anchor points too. Empty if nobody knows."
    >
      {rows.map((row) => (
        <fieldset class="cargo-row" key={row}>
          <legend class="hidden-words">Tie-down line {row + 1}</legend>
          <div class="fields">
            <Field typed={typed} name={`load.tieDowns.${row}.count`} label="How many" inputMode="numeric" />
            <Field
              typed={typed}
              name={`load.tieDowns.${row}.workingLoad`}
              label="Working load limit of each"
              unit="lb"
            />
            <Choice
              typed={typed}
              name={`load.tieDowns.${row}.way`}
              label="Which way"
              options={optionsOf(TIE_DOWN_WORDS)}
              none={null}
            />
          </div>
        </fieldset>
      ))}
      <Picks
        typed={typed}
        name="load.untied"
        label="Nothing at all?"
        kind="checkbox"
        options={[{ value: 'yes', label: 'Nothing ties it down' }]}
      />
    </Section>
  );
}

/** How many rows of a group hold something, counted to the last. */
function rowsTyped(typed: Typed, field: RegExp): number {
  return Object.keys(typed.values).reduce((most, name) => {
    const row = field.exec(name);
    return row && typedText(typed, name) !== '' ? Math.max(most, Number(row[1]) + 1) : most;
  }, 0);
}
