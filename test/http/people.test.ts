import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Caller, Role } from '../../src/use-cases/caller.js';
import { ChangeLicence } from '../../src/use-cases/people/change-licence.js';
import { ChangeRole } from '../../src/use-cases/people/change-role.js';
import { InvitePerson } from '../../src/use-cases/people/invite-person.js';
import { MendAddress } from '../../src/use-cases/people/mend-address.js';
import { PersonLeft } from '../../src/use-cases/people/person-left.js';
import { RevokeInvitation } from '../../src/use-cases/people/revoke-invitation.js';
import { ShowPeople } from '../../src/use-cases/people/show-people.js';
import { PASSWORD, startApp, type TestApp, type YardOfTest } from '../support/app.js';

let service: TestApp;

beforeAll(async () => {
  service = await startApp();
});
afterAll(() => service.close());

function callerOf(yard: YardOfTest, role: Role): Caller {
  const { id, name } = yard[role];
  const now = service.clock.now();
  const timeZone = 'America/Chicago';
  return {
    yardId: yard.yardId,
    personId: id,
    name,
    role,
    door: 'page',
    today: service.clock.today(timeZone),
    now,
    timeZone,
  };
}

/** The link in the text of the page that showed it. */
function linkIn(body: string): string {
  const link = /http:\/\/yard\.test(\/invitation\?token=[\w-]+)/.exec(body)?.[1];
  if (link === undefined) throw new Error(`no link in ${body}`);
  return link;
}

const tokenIn = (link: string) => link.slice(link.indexOf('=') + 1);

describe('who may do what with people', () => {
  let yard: YardOfTest;
  beforeAll(async () => {
    yard = await service.makeYard('Rank Field');
  });

  const ATTEMPTS: Readonly<Record<string, (caller: Caller) => Promise<{ ok: boolean }>>> = {
    'inviting somebody': (caller) =>
      service.app
        .get(InvitePerson)
        .run(caller, { email: `${caller.role}-asked@rank.example`, name: null, role: 'viewer' }),
    'taking an invitation back': (caller) =>
      service.app.get(RevokeInvitation).run(caller, { invitationId: '01890000-0000-7000-8000-000000000000' }),
    'changing a role': (caller) =>
      service.app.get(ChangeRole).run(caller, { personId: yard.viewer.id, role: 'viewer' }),
    'recording a licence': (caller) => service.app.get(ChangeLicence).run(caller, { personId: yard.hand.id, cdl: 'A' }),
    "mending somebody's address": (caller) =>
      service.app.get(MendAddress).run(caller, { personId: yard.viewer.id, email: 'mended@rank.example' }),
    'saying that somebody left': (caller) =>
      service.app.get(PersonLeft).run(caller, { personId: '01890000-0000-7000-8000-000000000000' }),
  };

  for (const [what, attempt] of Object.entries(ATTEMPTS)) {
    test(`${what} takes an owner`, async () => {
      for (const role of ['shop', 'hand'] as const) {
        expect(await attempt(callerOf(yard, role)), role).toEqual({
          ok: false,
          problem: { kind: 'not-allowed', needs: 'owner' },
        });
      }
      const byOwner = await attempt(callerOf(yard, 'owner'));
      // Where the thing acted on does not exist, that is what an owner is told.
      if (!byOwner.ok) expect(byOwner).toMatchObject({ problem: { kind: 'not-found' } });
    });
  }

  test('everybody may mend where their own mail goes, and sees who belongs to the yard', async () => {
    const viewer = callerOf(yard, 'viewer');
    const own = await service.app.get(MendAddress).run(viewer, { personId: yard.viewer.id, email: 'Own@Rank.example' });
    expect(own.ok).toBe(true);
    const seen = await service.app.get(ShowPeople).run(viewer);
    if (!seen.ok) throw new Error('refused');
    expect(seen.value.members.find((member) => member.personId === yard.viewer.id)?.email).toBe('own@rank.example');
    expect(seen.value.invitations).toEqual([]);
  });

  test('the form itself is shown to owners only, and its address answers nobody else', async () => {
    const hand = await service.signedIn(yard.hand);
    expect((await hand.get('/people')).body).not.toContain('Invite');
    expect((await hand.post('/people/invitations', { email: 'x@rank.example', role: 'owner' })).status).toBe(403);
    expect((await hand.get(`/people/${yard.owner.id}`)).status).toBe(403);
  });
});

describe('an invitation', () => {
  let yard: YardOfTest;
  beforeAll(async () => {
    yard = await service.makeYard('Far Gate');
  });

  async function invite(email: string, role: Role = 'hand'): Promise<string> {
    const owner = await service.signedIn(yard.owner);
    const answer = await owner.post('/people/invitations', { email, invitedName: 'Rowan Dell', role });
    expect(answer.status).toBe(200);
    return linkIn(answer.body);
  }

  test('lets somebody new choose a name and a password, and they are in', async () => {
    const link = await invite('rowan@fargate.example');
    const browser = service.browser();
    const page = await browser.get(link);
    expect(page.body).toContain('asks rowan@fargate.example to join Far Gate');
    const joined = await browser.post('/invitation', {
      token: tokenIn(link),
      yourName: 'Rowan Dell',
      password: PASSWORD,
    });
    expect(joined).toMatchObject({ status: 303, location: '/' });
    const people = await browser.get('/people');
    expect(people.status).toBe(200);
    expect(people.body).toContain('Rowan Dell, hand');
  });

  test('is mailed, and its secret is kept nowhere but in that mail', async () => {
    const link = await invite('mailed@fargate.example');
    const { Database } = await import('../../src/store/database.js');
    const rows = await service.app
      .get(Database)
      .inYard(yard.yardId, (tx) =>
        tx.notice.findMany({ where: { kind: 'invitation', toEmail: 'mailed@fargate.example' } }),
      );
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ state: 'waiting', personId: null });
    expect(rows[0]?.bodyText).toContain(link);
    const invitations = await service.app.get(Database).inYard(yard.yardId, (tx) => tx.invitation.findMany());
    expect(JSON.stringify(invitations)).not.toContain(tokenIn(link));
  });

  test('works once', async () => {
    const link = await invite('once@fargate.example');
    const fields = { token: tokenIn(link), yourName: 'Once', password: PASSWORD };
    expect((await service.browser().post('/invitation', fields)).status).toBe(303);
    const second = await service.browser().post('/invitation', fields);
    expect(second.status).toBe(404);
    expect(second.body).toContain('This invitation does not work');
  });

  test('is only for the address it was sent to', async () => {
    const link = await invite('meant@fargate.example', 'owner');
    const other = await service.signedIn(yard.viewer);
    const page = await other.get(link);
    expect(page.body).toContain(`You are signed in as ${yard.viewer.email}`);
    const tried = await other.post('/invitation', { token: tokenIn(link), yourName: 'Me', password: PASSWORD });
    expect(tried.status).toBe(409);
    expect((await other.get('/people')).body).toContain(`${yard.viewer.name}, viewer`);
  });

  test('is too old after two weeks', async () => {
    const link = await invite('late@fargate.example');
    const before = service.clock.at;
    service.clock.at = new Date(before.getTime() + 14 * 86_400_000);
    try {
      expect((await service.browser().get(link)).status).toBe(404);
    } finally {
      service.clock.at = before;
    }
    expect((await service.browser().get(link)).status).toBe(200);
  });

  test('can be taken back, and a newer one replaces it', async () => {
    const first = await invite('again@fargate.example');
    const second = await invite('again@fargate.example');
    expect((await service.browser().get(first)).status).toBe(404);
    expect((await service.browser().get(second)).status).toBe(200);
    const owner = await service.signedIn(yard.owner);
    const rows = [...(await owner.get('/people')).body.matchAll(/\/people\/invitations\/([\w-]+)\/revoke/g)];
    for (const row of rows) expect((await owner.post(row[0])).status).toBe(303);
    expect((await service.browser().get(second)).status).toBe(404);
  });

  test('to somebody who signs in already asks them to, and adds the yard to theirs', async () => {
    const elsewhere = await service.makeYard('Near Gate');
    const link = await invite(elsewhere.shop.email, 'viewer');
    expect((await service.browser().get(link)).body).toContain('Sign in to join');
    const browser = await service.signedIn(elsewhere.shop);
    expect(await browser.post('/invitation', { token: tokenIn(link) })).toMatchObject({ status: 303, location: '/' });
    expect((await browser.get('/people')).body).toContain(`${elsewhere.shop.name}, viewer`);
    const back = await browser.post('/people/switch-yard', { yardId: elsewhere.yardId });
    expect(back.status).toBe(303);
    expect((await browser.get('/people')).body).toContain(`${elsewhere.shop.name}, shop`);
  });

  test('a member is not invited twice; a slip in the form is named and kept', async () => {
    const owner = await service.signedIn(yard.owner);
    const twice = await owner.post('/people/invitations', { email: yard.hand.email, role: 'hand' });
    expect(twice.status).toBe(409);
    expect(twice.body).toContain('belongs to this yard already');
    const slip = await owner.post('/people/invitations', {
      email: 'no address',
      invitedName: 'Kept Name',
      role: 'boss',
    });
    expect(slip.status).toBe(422);
    expect(slip.body).toContain('Enter a mail address such as pat@example.com');
    expect(slip.body).toContain('Choose what they may do from: owner, shop, hand, viewer.');
    expect(slip.body).toContain('value="Kept Name"');
  });

  test('a short password is asked for again and makes nobody a member', async () => {
    const link = await invite('short@fargate.example');
    const answer = await service
      .browser()
      .post('/invitation', { token: tokenIn(link), yourName: '', password: 'short' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('Enter your name.');
    expect(answer.body).toContain('at least 10 characters');
    expect((await service.browser().get(link)).status).toBe(200);
  });
});

describe('roles and leaving', () => {
  test('a new role holds from the next page on', async () => {
    const yard = await service.makeYard('Slow Turn');
    const shop = await service.signedIn(yard.shop);
    expect((await shop.get('/people')).body).not.toContain('Invite');
    const owner = await service.signedIn(yard.owner);
    expect((await owner.post(`/people/${yard.shop.id}/role`, { role: 'owner' })).location).toBe('/people?said=role');
    expect((await shop.get('/people')).body).toContain('Invite');
  });

  test('whoever left cannot get in: not with the session they have, not by signing in, not with a key', async () => {
    const yard = await service.makeYard('Long Shed');
    const hand = await service.signedIn(yard.hand);
    const key = /class="secret">(axlebook_[\w-]+)</.exec(
      (await hand.post('/people/keys', { keyName: 'scale' })).body,
    )?.[1];
    const withKey = () => service.browser().get('/api/anything', { headers: { authorization: `Bearer ${key}` } });
    const owner = await service.signedIn(yard.owner);
    expect((await owner.post(`/people/${yard.hand.id}/left`)).location).toBe('/people?said=left');

    expect(await hand.get('/people')).toMatchObject({ status: 303, location: '/first-run' });
    expect((await hand.get('/first-run')).body).toContain('You belong to no yard');
    const anew = await service.signedIn(yard.hand);
    expect(await anew.get('/people')).toMatchObject({ status: 303, location: '/first-run' });
    expect((await withKey()).status).not.toBe(200);
    const people = await owner.get('/people');
    expect(people.body).toContain(`${yard.hand.name}, on 2026-03-02.`);
  });

  test('whoever left and is asked back takes up their old place', async () => {
    const yard = await service.makeYard('Back Again');
    const owner = await service.signedIn(yard.owner);
    await owner.post(`/people/${yard.hand.id}/left`);
    const asked = await owner.post('/people/invitations', { email: yard.hand.email, role: 'shop' });
    const hand = await service.signedIn(yard.hand);
    expect((await hand.post('/invitation', { token: tokenIn(linkIn(asked.body)) })).status).toBe(303);
    expect((await hand.get('/people')).body).toContain(`${yard.hand.name}, shop`);
  });

  test('the last owner neither leaves nor becomes less', async () => {
    const yard = await service.makeYard('One Owner');
    const owner = await service.signedIn(yard.owner);
    const less = await owner.post(`/people/${yard.owner.id}/role`, { role: 'shop' });
    expect(less.status).toBe(409);
    expect(less.body).toContain('is the only owner. Make somebody else owner first.');
    expect((await owner.post(`/people/${yard.owner.id}/left`)).status).toBe(409);
    expect((await owner.get('/people')).status).toBe(200);
  });

  test('two owners who let each other go at the same moment: one of them stays', async () => {
    const yard = await service.makeYard('Both Go');
    const first = callerOf(yard, 'owner');
    await service.app.get(ChangeRole).run(first, { personId: yard.shop.id, role: 'owner' });
    const second = { ...callerOf(yard, 'shop'), role: 'owner' as const };
    const leave = service.app.get(PersonLeft);
    const outcomes = await Promise.all([
      leave.run(first, { personId: yard.shop.id }),
      leave.run(second, { personId: yard.owner.id }),
    ]);
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
  });

  test('mail that came back is shown until the address is mended', async () => {
    const yard = await service.makeYard('Bounce Back');
    const { Database } = await import('../../src/store/database.js');
    const { MembershipStore } = await import('../../src/store/membership-store.js');
    await service.app
      .get(Database)
      .inYard(yard.yardId, (tx) =>
        service.app
          .get(MembershipStore)
          .save(tx, yard.hand.id, { bouncedAt: service.clock.now(), bounceNote: 'no such mailbox' }),
      );
    const owner = await service.signedIn(yard.owner);
    expect((await owner.get('/people')).body).toContain('Mail came back: no such mailbox. Mend the address.');
    const mended = await owner.post(`/people/${yard.hand.id}/address`, { email: 'new@bounceback.example' });
    expect(mended.location).toBe('/people?said=address');
    const people = (await owner.get('/people')).body;
    expect(people).toContain('new@bounceback.example');
    expect(people).not.toContain('Mail came back');
    // What they sign in with stays.
    expect((await service.signedIn(yard.hand)).cookies.size).toBe(1);
  });
});

describe('one yard and another', () => {
  test('a session of one yard neither sees nor changes people of another', async () => {
    const [mine, theirs] = [await service.makeYard('Mine'), await service.makeYard('Theirs')];
    const owner = await service.signedIn(mine.owner);
    expect((await owner.get(`/people/${theirs.hand.id}`)).status).toBe(404);
    expect((await owner.post(`/people/${theirs.hand.id}/role`, { role: 'viewer' })).status).toBe(404);
    expect((await owner.post(`/people/${theirs.hand.id}/left`)).status).toBe(404);
    expect((await owner.post(`/people/${theirs.hand.id}/address`, { email: 'x@mine.example' })).status).toBe(404);
    expect((await owner.post('/people/switch-yard', { yardId: theirs.yardId })).status).toBe(404);
    expect((await owner.get('/people')).body).not.toContain('of Theirs');

    const theirOwner = await service.signedIn(theirs.owner);
    await theirOwner.post('/people/invitations', { email: 'guest@theirs.example', role: 'viewer' });
    const revoke = /\/people\/invitations\/[\w-]+\/revoke/.exec((await theirOwner.get('/people')).body)?.[0] ?? '';
    expect((await owner.post(revoke)).status).toBe(404);
    expect((await theirOwner.get('/people')).body).toContain('guest@theirs.example');
  });

  test('ids that are none are answered like ids of nothing', async () => {
    const yard = await service.makeYard('Odd Ids');
    const owner = await service.signedIn(yard.owner);
    for (const id of ['invitations', 'x', "1'--", '01890000-0000-7000-8000-000000000000']) {
      expect((await owner.get(`/people/${encodeURIComponent(id)}`)).status, id).toBe(404);
      expect((await owner.post(`/people/invitations/${encodeURIComponent(id)}/revoke`)).status, id).toBe(404);
      expect((await owner.post(`/people/keys/${encodeURIComponent(id)}/revoke`)).status, id).toBe(404);
    }
  });
});

describe('keys for programs', () => {
  test('a key is shown once, opens the API and nothing else, and is dead when taken back', async () => {
    const yard = await service.makeYard('Key Yard');
    const hand = await service.signedIn(yard.hand);
    const made = await hand.post('/people/keys', { keyName: 'weigh scale' });
    const key = /class="secret">(axlebook_[\w-]+)</.exec(made.body)?.[1] ?? '';
    expect(key.length).toBeGreaterThan(40);
    expect((await hand.get('/people')).body).not.toContain(key);

    const { Callers } = await import('../../src/http/callers.js');
    const find = () => service.app.get(Callers).find({ headers: { authorization: `Bearer ${key}` } } as never, 'api');
    expect(await find()).toMatchObject({
      kind: 'caller',
      caller: { yardId: yard.yardId, personId: yard.hand.id, role: 'hand', door: 'api', today: '2026-03-02' },
    });
    const onPage = await service.browser().get('/people', { headers: { authorization: `Bearer ${key}` } });
    expect(onPage.status).toBe(303);

    const revoke = /\/people\/keys\/[\w-]+\/revoke/.exec((await hand.get('/people')).body)?.[0] ?? '';
    const other = await service.signedIn(yard.shop);
    expect((await other.post(revoke)).status).toBe(404);
    expect((await hand.post(revoke)).status).toBe(303);
    expect(await find()).toEqual({ kind: 'nobody' });
  });

  test('a key needs a name that says what it is for', async () => {
    const yard = await service.makeYard('Nameless');
    const answer = await (await service.signedIn(yard.hand)).post('/people/keys', { keyName: ' ' });
    expect(answer.status).toBe(422);
    expect(answer.body).toContain('Enter what the key is for.');
  });
});
