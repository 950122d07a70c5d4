import { PASSWORD_LEAST } from '../../use-cases/people/read-password.js';
import { Field, type Typed, WrongList } from '../components/field.js';
import { Page } from '../page.js';

export function ForgotPage({ typed }: { readonly typed: Typed }) {
  return (
    <Page title="Forgot the password" caller={null} narrow>
      <h1>Set a new password</h1>
      <p>Enter the mail address you sign in with. You get a mail with a link to choose a new password.</p>
      <form class="form" method="post" action="/forgot-password">
        <WrongList typed={typed} />
        <Field typed={typed} name="email" label="Mail address" type="email" autoComplete="username" required />
        <div class="row">
          <button class="button button-main" type="submit">
            Send the link
          </button>
          <a href="/sign-in">Back to sign-in</a>
        </div>
      </form>
    </Page>
  );
}

export function LinkSentPage({ validHours }: { readonly validHours: number }) {
  return (
    <Page title="Look into your mail" caller={null} narrow>
      <h1>Look into your mail</h1>
      <p>
        If somebody signs in with that address, a mail is on its way to it. Its link works once, for {validHours} hours.
      </p>
      <p>Nothing after ten minutes? Look among the junk, check the address, or ask an owner of your yard.</p>
      <p>
        <a href="/sign-in">Back to sign-in</a>
      </p>
    </Page>
  );
}

export function ResetPage({ typed, token }: { readonly typed: Typed; readonly token: string }) {
  return (
    <Page title="Choose a new password" caller={null} narrow>
      <h1>Choose a new password</h1>
      <p>It signs you out everywhere else.</p>
      <form class="form" method="post" action="/reset-password">
        <WrongList typed={typed} />
        <input type="hidden" name="token" value={token} />
        <Field
          typed={typed}
          name="password"
          label="New password"
          type="password"
          autoComplete="new-password"
          hint={`At least ${PASSWORD_LEAST} characters. A few words in a row are good.`}
          required
        />
        <button class="button button-main" type="submit">
          Keep this password
        </button>
      </form>
    </Page>
  );
}

export function LinkTooOldPage() {
  return (
    <Page title="This link does not work" caller={null} narrow>
      <h1>This link does not work</h1>
      <p>It was used before, is too old, or was cut short on the way. Ask for a new one.</p>
      <p>
        <a class="button button-main" href="/forgot-password">
          Send a new link
        </a>
      </p>
    </Page>
  );
}
