import { Choice, Field, Section, type Typed, typedText } from '../components/field.js';
import { MOST_AXLES } from '../form/build-form.js';
import { tirePlaces } from '../form/tire-form.js';
import { optionsOf, TIRE_KIND_WORDS } from '../words/build-words.js';

interface TireFieldsProps {
  readonly typed: Typed;
}

/** Marks once for all tires, then a date code for each place; a tire that differs says so in its own row. */
export function TireFields({ typed }: TireFieldsProps) {
  return (
    <Section
      title="Tires"
      lede="Read the sidewalls, the inner side too. The date code is the last four digits of the DOT number: week, then year."
    >
      <h3>What they have in common</h3>
      <MarkFields typed={typed} at="tires.all" />
      <div class="fields">
        <Field
          typed={typed}
          name="tires.all.dateCode"
          label="Date code, if all are the same"
          inputMode="text"
          hint="Such as 1519, or the whole DOT number"
          maxLength={24}
        />
        <Field typed={typed} name="tires.all.fittedOn" label="Fitted on" type="date" />
      </div>
      {Array.from({ length: MOST_AXLES }, (_, axle) => axle + 1).map((axle) => (
        <AxleTires typed={typed} axle={axle} key={axle} />
      ))}
      <TireRow typed={typed} place="spare" label="Spare" />
    </Section>
  );
}

function AxleTires({ typed, axle }: TireFieldsProps & { readonly axle: number }) {
  const places = tirePlaces(MOST_AXLES).filter((place) => place.startsWith(String(axle)));
  const used = Object.keys(typed.values).some(
    (name) => name.startsWith(`tires.${axle}`) && typedText(typed, name) !== '',
  );
  return (
    <details class="fold" open={axle <= 2 || used}>
      <summary>
        <span class="strong">Tires of axle {axle}</span>
      </summary>
      <div class="stack-tight">
        {places.map((place) => (
          <TireRow typed={typed} place={place} label={placeWords(place)} key={place} />
        ))}
      </div>
    </details>
  );
}

function TireRow({ typed, place, label }: TireFieldsProps & { readonly place: string; readonly label: string }) {
  const at = `tires.${place}`;
  const own = Object.keys(typed.values).some(
    (name) => name.startsWith(`${at}.`) && !name.endsWith('dateCode') && typedText(typed, name) !== '',
  );
  return (
    <div class="tire-row">
      <Field typed={typed} name={`${at}.dateCode`} label={`${label}, date code`} inputMode="text" maxLength={24} />
      <details class="more" open={own}>
        <summary>
          {label}: {place === 'spare' ? 'its marks' : 'its marks, if it differs'}
        </summary>
        <div class="stack">
          <MarkFields typed={typed} at={at} of={label} />
          <Field typed={typed} name={`${at}.fittedOn`} label={`${label}, fitted on`} type="date" />
        </div>
      </details>
    </div>
  );
}

/** What is marked on a sidewall, but for the date code. */
export function MarkFields({ typed, at, of }: TireFieldsProps & { readonly at: string; readonly of?: string }) {
  const name = (label: string) =>
    of === undefined ? label : `${of}, ${label.charAt(0).toLowerCase()}${label.slice(1)}`;
  return (
    <div class="fields">
      <Field typed={typed} name={`${at}.size`} label={name('Size')} hint="Such as ST235/80R16" maxLength={24} />
      <Choice typed={typed} name={`${at}.kind`} label={name('Kind')} options={optionsOf(TIRE_KIND_WORDS)} />
      <Field
        typed={typed}
        name={`${at}.loadRange`}
        label={name('Load range')}
        hint="A letter, such as E"
        maxLength={4}
      />
      <Field typed={typed} name={`${at}.maxLoadSingle`} label={name('Max load, single')} unit="lb" />
      <Field typed={typed} name={`${at}.maxLoadDual`} label={name('Max load, dual')} unit="lb" />
      <Field typed={typed} name={`${at}.maxColdPressure`} label={name('At cold pressure')} unit="psi" />
      <Field typed={typed} name={`${at}.loadIndexSingle`} label={name('Load index, single')} inputMode="numeric" />
      <Field typed={typed} name={`${at}.loadIndexDual`} label={name('Load index, dual')} inputMode="numeric" />
      <Field
        typed={typed}
        name={`${at}.speedSymbol`}
        label={name('Speed symbol')}
        hint="The letter beside the load index"
        maxLength={4}
      />
    </div>
  );
}

function placeWords(place: string): string {
  const side = place.charAt(1) === 'L' ? 'left' : 'right';
  return place.endsWith('I') ? `Axle ${place.charAt(0)} ${side} inner (dual)` : `Axle ${place.charAt(0)} ${side}`;
}
