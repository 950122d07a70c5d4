import { Field, type Typed, WrongList } from '../components/field.js';
import { Island } from '../components/island.js';
import { Page } from '../page.js';

interface SignInPageProps {
  readonly typed: Typed;
  /** The page of ours to go on to. */
  readonly next: string;
  readonly said?: string | null;
  /** Whether somebody new may set up a yard here. */
  readonly mayFound: boolean;
}

export function SignInPage({ typed, next, said, mayFound }: SignInPageProps) {
  return (
    <Page title="Sign in" caller={null} narrow said={said}>
      <h1>Sign in</h1>
      <form class="form" method="post" action="/sign-in">
        <WrongList typed={typed} />
        <input type="hidden" name="next" value={next} />
        <Field typed={typed} name="email" label="Mail address" type="email" autoComplete="username" required />
        <Field
          typed={typed}
          name="password"
          label="Password"
          type="password"
          autoComplete="current-password"
          required
        />
        <div class="row">
          <button class="button button-main" type="submit">
            Sign in
          </button>
          <a href="/forgot-password">Forgot the password?</a>
        </div>
      </form>
      <Island name="signed-out" data={{}}>
        {null}
      </Island>
      {mayFound && (
        <p>
          New here? <a href="/first-run">Set up your own yard</a>
        </p>
      )}
    </Page>
  );
}
