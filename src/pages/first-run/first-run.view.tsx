import { PASSWORD_LEAST } from '../../use-cases/people/read-password.js';
import { Choice, Field, Section, type Typed, WrongList } from '../components/field.js';
import { Page } from '../page.js';
import { TIME_ZONES } from './time-zones.js';

interface FirstRunPageProps {
  readonly typed: Typed;
  /** Null for somebody new, who gets an account with the yard. */
  readonly person: { readonly name: string; readonly email: string } | null;
}

/** Set up a yard: its name and time zone, and whose it is. */
export function FirstRunPage({ typed, person }: FirstRunPageProps) {
  return (
    <Page title="Set up your yard" caller={null} narrow>
      <h1>Set up your yard</h1>
      <p>
        A yard is one owner's place and trailers. It starts empty but for the usual checks, which you can change. Nobody
        of another yard ever sees it.
      </p>
      <form class="form" method="post" action="/first-run">
        <WrongList typed={typed} />
        <Section title="The yard">
          <div class="fields">
            <Field typed={typed} name="name" label="Name of the yard" autoComplete="organization" required wide />
            <Field typed={typed} name="place" label="Where it is" hint="Town and state, for example." wide />
            <Choice
              typed={typed}
              name="timeZone"
              label="Time zone"
              options={TIME_ZONES}
              none="Choose"
              hint="Says what day it is, and when mails go out."
              required
              wide
            />
          </div>
        </Section>
        {person === null ? (
          <Section title="You, its owner">
            <div class="fields">
              <Field typed={typed} name="yourName" label="Your name" autoComplete="name" required wide />
              <Field
                typed={typed}
                name="email"
                label="Mail address"
                type="email"
                autoComplete="username"
                required
                wide
              />
              <Field
                typed={typed}
                name="password"
                label="Choose a password"
                type="password"
                autoComplete="new-password"
                hint={`At least ${PASSWORD_LEAST} characters. A few words in a row are good.`}
                required
                wide
              />
            </div>
          </Section>
        ) : (
          <p>
            {person.name} ({person.email}) will be its owner.
          </p>
        )}
        <button class="button button-main" type="submit">
          Set up the yard
        </button>
      </form>
      {person === null && (
        <p>
          Signed in here before? <a href="/sign-in?next=/first-run">Sign in first</a>
        </p>
      )}
    </Page>
  );
}

/** For somebody who may not set up a yard: how to get into one. */
export function NoYardPage({ person }: Pick<FirstRunPageProps, 'person'>) {
  return (
    <Page title="No yard" caller={null} narrow>
      <h1>{person === null ? 'By invitation' : 'You belong to no yard'}</h1>
      <p>
        {person === null
          ? 'This service has its yard. An owner of it can ask you to join: you then get a mail with a link.'
          : `Nobody has asked ${person.email} to join a yard, or you left the one you were in. An owner of a yard can ask you to join: you then get a mail with a link.`}
      </p>
      {person === null ? (
        <p>
          <a class="button button-main" href="/sign-in">
            Sign in
          </a>
        </p>
      ) : (
        <form method="post" action="/sign-out">
          <button class="button" type="submit">
            Sign out
          </button>
        </form>
      )}
    </Page>
  );
}
