import { type Caller, may, ROLES } from '../../use-cases/caller.js';
import type { PeopleScreen } from '../../use-cases/people/show-people.js';
import { Choice, Field, type Typed, WrongList } from '../components/field.js';
import { Head, Page } from '../page.js';
import { RoleList } from './people.view.js';

interface PersonPageProps {
  readonly caller: Caller;
  readonly member: PeopleScreen['members'][number];
  readonly typed: Typed;
}

/** One member: where their mail goes, and for an owner what they may do and whether they are still here. */
export function PersonPage({ caller, member, typed }: PersonPageProps) {
  const path = `/people/${member.personId}`;
  return (
    <Page title={member.name} caller={caller} door="People" at="below">
      <Head title={member.name} lede={`${member.role} of this yard`} />
      <div class="stack">
        <WrongList typed={typed} />
        <form class="sheet" method="post" action={`${path}/address`}>
          <h2>Where mail goes</h2>
          {member.bouncedAt !== null && (
            <p class="wrong">Mail to {member.email} came back. Nothing is sent until the address is mended.</p>
          )}
          <Field
            typed={typed}
            name="email"
            label="Mail address"
            type="email"
            required
            hint="For the yard's mail. What they sign in with stays as it is."
          />
          <Save>Send mail there</Save>
        </form>
        {may(caller, 'owner') && (
          <>
            {member.bouncedAt === null && (
              <form class="sheet" method="post" action={`${path}/bounced`}>
                <h2>Mail to them came back</h2>
                <p>Nothing more is sent there, the owners hear of it, and what was theirs to do goes to its backup.</p>
                <Field
                  typed={typed}
                  name="note"
                  label="What the returned mail says"
                  required
                  maxLength={200}
                  hint="Such as: mailbox does not exist"
                />
                <Save>Mark the address as failed</Save>
              </form>
            )}
            <form class="sheet" method="post" action={`${path}/role`}>
              <h2>What they may do</h2>
              <Choice
                typed={typed}
                name="role"
                label="Role"
                none={null}
                options={ROLES.map((role) => ({ value: role, label: role }))}
              />
              <RoleList />
              <Save>Change the role</Save>
            </form>
            <form class="sheet" method="post" action={`${path}/licence`}>
              <h2>Commercial license</h2>
              <Choice
                typed={typed}
                name="cdl"
                label="Class"
                options={[
                  { value: 'A', label: 'Class A' },
                  { value: 'B', label: 'Class B' },
                  { value: 'none', label: 'None' },
                ]}
              />
              <Save>Record the license</Save>
            </form>
            <form class="sheet" method="post" action={`${path}/left`}>
              <h2>Left the yard</h2>
              <p>
                They can no longer get in, their keys are dead and nothing is sent to them. What they recorded stays
                under their name; what was theirs to do goes to its backup.
              </p>
              <div>
                <button class="button button-stop" type="submit">
                  {member.name} has left
                </button>
              </div>
            </form>
          </>
        )}
      </div>
    </Page>
  );
}

function Save({ children }: { readonly children: string }) {
  return (
    <div>
      <button class="button" type="submit">
        {children}
      </button>
    </div>
  );
}
