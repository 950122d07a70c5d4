import type { OpenInvitation } from '../../use-cases/people/read-invitation.js';
import { PASSWORD_LEAST } from '../../use-cases/people/read-password.js';
import { Field, type Typed, WrongList } from '../components/field.js';
import { Page } from '../page.js';
import { ROLE_WORDS } from '../people/role-words.js';

/** How whoever opens the link stands to the address it was sent to. */
export type InvitedAs =
  /** Nobody signs in with it yet: choose a name and a password. */
  | { readonly kind: 'new' }
  /** Signed in with it. */
  | { readonly kind: 'self'; readonly name: string }
  /** Known, but not signed in. */
  | { readonly kind: 'known' }
  /** Signed in as somebody else. */
  | { readonly kind: 'other'; readonly email: string };

interface InvitationPageProps {
  readonly invitation: OpenInvitation;
  readonly token: string;
  readonly as: InvitedAs;
  readonly typed: Typed;
}

export function InvitationPage({ invitation, token, as, typed }: InvitationPageProps) {
  const { yardName, email, invitedByName, role } = invitation;
  return (
    <Page title={`Join ${yardName}`} caller={null} narrow>
      <h1>Join {yardName}</h1>
      <p>
        {invitedByName} asks {email} to join {yardName} as <strong>{role}</strong>. {ROLE_WORDS[role]}
      </p>
      {as.kind === 'new' && <JoinNew token={token} typed={typed} />}
      {as.kind === 'self' && <JoinKnown token={token} typed={typed} name={as.name} />}
      {as.kind === 'known' && (
        <p>
          You have signed in here before.{' '}
          <a class="button button-main" href={`/sign-in?next=${encodeURIComponent(`/invitation?token=${token}`)}`}>
            Sign in to join
          </a>
        </p>
      )}
      {as.kind === 'other' && (
        <form class="form" method="post" action="/sign-out">
          <p>You are signed in as {as.email}. Sign out, then open the link of the mail again.</p>
          <button class="button" type="submit">
            Sign out
          </button>
        </form>
      )}
    </Page>
  );
}

function JoinNew({ token, typed }: { readonly token: string; readonly typed: Typed }) {
  return (
    <form class="form" method="post" action="/invitation">
      <WrongList typed={typed} />
      <input type="hidden" name="token" value={token} />
      <Field typed={typed} name="yourName" label="Your name" autoComplete="name" required />
      <Field
        typed={typed}
        name="password"
        label="Choose a password"
        type="password"
        autoComplete="new-password"
        hint={`At least ${PASSWORD_LEAST} characters. A few words in a row are good.`}
        required
      />
      <button class="button button-main" type="submit">
        Join
      </button>
    </form>
  );
}

function JoinKnown({ token, typed, name }: { readonly token: string; readonly typed: Typed; readonly name: string }) {
  return (
    <form class="form" method="post" action="/invitation">
      <WrongList typed={typed} />
      <input type="hidden" name="token" value={token} />
      <button class="button button-main" type="submit">
        Join as {name}
      </button>
    </form>
  );
}

export function InvitationGonePage() {
  return (
    <Page title="This invitation does not work" caller={null} narrow>
      <h1>This invitation does not work</h1>
      <p>It was used before, was taken back, is too old, or was cut short on the way. Ask the yard for a new one.</p>
      <p>
        <a href="/">On to the gate</a>
      </p>
    </Page>
  );
}
