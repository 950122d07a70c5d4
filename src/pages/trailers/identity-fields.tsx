import { Choice, Field, Section, type Typed } from '../components/field.js';

/** What the trailer is called and what it is on paper. */
export function IdentityFields({ typed }: { readonly typed: Typed }) {
  return (
    <Section
      title="Which trailer"
      lede="Only the number is needed. Whatever you do not know, leave empty: it is kept as unknown and listed."
    >
      <div class="fields">
        <Field
          typed={typed}
          name="yardNumber"
          label="Number painted on it"
          required
          maxLength={24}
          hint="Such as T-07"
        />
        <Field typed={typed} name="name" label="What people call it" maxLength={80} />
        <Field typed={typed} name="vin" label="VIN" maxLength={40} hint="Empty if home-built" />
        <Field typed={typed} name="registrationPlate" label="Registration plate" maxLength={24} />
        <Field typed={typed} name="registrationExpiresOn" label="Registered until" type="date" />
        <Field typed={typed} name="insuranceExpiresOn" label="Insured until" type="date" />
        <Field typed={typed} name="boughtOn" label="Bought on" type="date" />
        <Field typed={typed} name="boughtFor" label="Paid" unit="$" />
        <Choice
          typed={typed}
          name="stored"
          label="Where it stands"
          options={[
            { value: 'open', label: 'In the open' },
            { value: 'cover', label: 'Under cover' },
          ]}
        />
        <Field typed={typed} name="note" label="Note" lines={2} wide maxLength={4000} />
      </div>
    </Section>
  );
}
