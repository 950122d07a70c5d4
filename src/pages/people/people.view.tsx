import type { Caller } from '../../use-cases/caller.js';
import { may, ROLES } from '../../use-cases/caller.js';
import type { PeopleScreen } from '../../use-cases/people/show-people.js';
import { Choice, Field, type Typed, WrongList } from '../components/field.js';
import { type Column, Table } from '../components/table.js';
import { Head, Page } from '../page.js';
import { ROLE_WORDS } from './role-words.js';

/** A secret made just now. It is on this page and nowhere else. */
export type Secret =
  | { readonly kind: 'invitation'; readonly email: string; readonly url: string }
  | { readonly kind: 'key'; readonly name: string; readonly key: string };

interface PeoplePageProps {
  readonly caller: Caller;
  readonly screen: PeopleScreen;
  readonly typed: Typed;
  readonly said: string | null;
  readonly secret: Secret | null;
}

type Member = PeopleScreen['members'][number];

export function PeoplePage({ caller, screen, typed, said, secret }: PeoplePageProps) {
  const isOwner = may(caller, 'owner');
  const here = screen.members.filter((member) => member.leftOn === null);
  const gone = screen.members.filter((member) => member.leftOn !== null);
  return (
    <Page title="People" caller={caller} door="People" said={said}>
      <Head title="People" lede="Who belongs to this yard, and what each may do." />
      <div class="stack">
        {secret !== null && <SecretSheet secret={secret} />}
        <Table caption="In the yard" columns={memberColumns(caller)} rows={here} rowKey={(member) => member.personId} />
        {isOwner && <Invitations caller={caller} screen={screen} typed={typed} />}
        {gone.length > 0 && <Gone members={gone} />}
        <Keys screen={screen} typed={typed} />
        {screen.otherYards.length > 0 && <OtherYards yards={screen.otherYards} />}
      </div>
    </Page>
  );
}

function memberColumns(caller: Caller): readonly Column<Member>[] {
  const mayChange = (member: Member) => may(caller, 'owner') || member.personId === caller.personId;
  return [
    { label: 'Name', lead: true, cell: (member) => member.name },
    { label: 'Role', cell: (member) => member.role },
    {
      label: 'Mail goes to',
      cell: (member) => (
        <>
          {member.email}
          {member.bouncedAt !== null && <span class="wrong">Mail came back{note(member)}. Mend the address.</span>}
        </>
      ),
    },
    { label: 'Commercial license', cell: (member) => LICENCE[member.cdl ?? ''] },
    {
      label: 'Change',
      cell: (member) =>
        mayChange(member) && (
          <a href={`/people/${member.personId}`}>
            Change<span class="hidden-words"> {member.name}</span>
          </a>
        ),
    },
  ];
}

const note = ({ bounceNote }: Member) => (bounceNote === null ? '' : `: ${bounceNote}`);

const LICENCE: Readonly<Record<string, string>> = { A: 'Class A', B: 'Class B', none: 'None', '': 'Unknown' };

function SecretSheet({ secret }: { readonly secret: Secret }) {
  return (
    <section class="sheet" aria-label="Shown this once">
      {secret.kind === 'invitation' ? (
        <>
          <p role="status">
            <strong>{secret.email}</strong> is invited, and a mail is on its way. Should it not arrive, hand over this
            link yourself; it is shown this once:
          </p>
          <p class="secret">{secret.url}</p>
        </>
      ) : (
        <>
          <p role="status">
            The key <strong>{secret.name}</strong>, shown this once. Programs send it as{' '}
            <code>Authorization: Bearer</code> and then may do what you may.
          </p>
          <p class="secret">{secret.key}</p>
        </>
      )}
    </section>
  );
}

function Invitations({ caller, screen, typed }: Pick<PeoplePageProps, 'caller' | 'screen' | 'typed'>) {
  return (
    <section class="sheet">
      <h2>Invitations</h2>
      {screen.invitations.length > 0 && (
        <ul class="lines">
          {screen.invitations.map((invitation) => (
            <li key={invitation.id} class="apart">
              <span>
                {invitation.name === null ? '' : `${invitation.name}, `}
                {invitation.email}, as {invitation.role}.{' '}
                {invitation.tooOld ? 'Too old to be taken.' : `Good until ${day(invitation.expiresAt, caller)}.`}
              </span>
              <form method="post" action={`/people/invitations/${invitation.id}/revoke`}>
                <button class="button" type="submit">
                  Take back<span class="hidden-words"> the invitation of {invitation.email}</span>
                </button>
              </form>
            </li>
          ))}
        </ul>
      )}
      <form class="form" method="post" action="/people/invitations">
        <WrongList typed={typed} />
        <div class="fields">
          <Field typed={typed} name="email" label="Mail address" type="email" required />
          <Field typed={typed} name="invitedName" label="Name" />
          <Choice
            typed={typed}
            name="role"
            label="May do"
            none="Choose"
            required
            options={ROLES.map((role) => ({ value: role, label: role }))}
          />
        </div>
        <RoleList />
        <div>
          <button class="button button-main" type="submit">
            Invite
          </button>
        </div>
      </form>
    </section>
  );
}

export function RoleList() {
  return (
    <ul class="plain soft small">
      {ROLES.map((role) => (
        <li key={role}>{ROLE_WORDS[role]}</li>
      ))}
    </ul>
  );
}

function Gone({ members }: { readonly members: readonly Member[] }) {
  return (
    <section class="sheet">
      <h2>Left the yard</h2>
      <ul class="plain">
        {members.map((member) => (
          <li key={member.personId}>
            {member.name}, on {member.leftOn}. What they recorded stays under their name.
          </li>
        ))}
      </ul>
    </section>
  );
}

function Keys({ screen, typed }: Pick<PeoplePageProps, 'screen' | 'typed'>) {
  return (
    <section class="sheet">
      <h2>Keys for programs</h2>
      <p class="soft">
        With a key a program uses the JSON API as the person who made it, in this yard. Take back what is not in use.
      </p>
      {screen.keys.length > 0 && (
        <ul class="lines">
          {screen.keys.map((key) => (
            <li key={key.id} class="apart">
              <span>
                {key.name}, of {key.holder}.{' '}
                {key.lastUsedAt === null ? 'Never used.' : `Last used ${key.lastUsedAt.toISOString().slice(0, 10)}.`}
              </span>
              <form method="post" action={`/people/keys/${key.id}/revoke`}>
                <button class="button" type="submit">
                  Take back<span class="hidden-words"> the key {key.name}</span>
                </button>
              </form>
            </li>
          ))}
        </ul>
      )}
      <form class="form" method="post" action="/people/keys">
        <Field
          typed={typed}
          name="keyName"
          label="What the key is for"
          hint="The program or machine that will use it."
        />
        <div>
          <button class="button" type="submit">
            Make a key
          </button>
        </div>
      </form>
    </section>
  );
}

function OtherYards({ yards }: { readonly yards: PeopleScreen['otherYards'] }) {
  return (
    <section class="sheet">
      <h2>Your other yards</h2>
      <ul class="lines">
        {yards.map(({ yardId, name, role }) => (
          <li key={yardId} class="apart">
            <span>
              {name}, as {role}
            </span>
            <form method="post" action="/people/switch-yard">
              <input type="hidden" name="yardId" value={yardId} />
              <button class="button" type="submit">
                Work in {name}
              </button>
            </form>
          </li>
        ))}
      </ul>
    </section>
  );
}

function day(at: Date, { timeZone }: Caller): string {
  return new Intl.DateTimeFormat('en-US', { timeZone, dateStyle: 'medium' }).format(at);
}
