import { randomInt } from 'node:crypto';
import type { INestApplicationContext } from '@nestjs/common';
import pg from 'pg';
import { DEMO_PEOPLE, DEMO_YARD, type DemoPerson } from '../seeds/demo/people.js';
import { seedDemo } from '../seeds/seed.js';
import { Clock } from './http/clock.js';
import { SignIn } from './http/sign-in/sign-in.js';
import type { Caller } from './use-cases/caller.js';
import { AnyYard } from './use-cases/people/any-yard.js';
import { FindCaller } from './use-cases/people/find-caller.js';
import { FoundYard } from './use-cases/people/found-yard.js';

/**
 * Gives an empty database its demo yard, so that there is something to look at. `say` shows the sign-in before the
 * yard is filled: a start that is interrupted meanwhile has told it, and the next one goes on filling.
 * Copies of the service that start at once take turns.
 */
export async function firstStart(
  app: INestApplicationContext,
  databaseUrl: string,
  say: (line: string) => void,
): Promise<void> {
  const turn = new pg.Client({ connectionString: databaseUrl, application_name: 'axlebook first start' });
  await turn.connect();
  try {
    await turn.query("select pg_advisory_lock(hashtext('axlebook first start'))");
    if (await app.get(AnyYard).run()) return await fillDemo(app);
    const password = speakablePassword();
    await makeDemo(app, password);
    say('A demo yard was made. Its people sign in with one password, shown this once:');
    for (const { email, role } of DEMO_PEOPLE) say(`  ${email.padEnd(30)} ${role}`);
    say(`  password: ${password}`);
    say('Filling the demo yard …');
    await fillDemo(app);
  } finally {
    await turn.end();
  }
}

async function makeDemo(app: INestApplicationContext, password: string): Promise<void> {
  const signIn = app.get(SignIn);
  const people = [];
  for (const { name, email, role, cdl } of DEMO_PEOPLE) {
    // Earlier tries that were cut off may have left people without a yard; they get the password shown now.
    const id = await signIn.makePerson({ name, email, password });
    people.push({ id, name, email, role, cdl });
  }
  const { name, timeZone } = DEMO_YARD;
  const founded = await app.get(FoundYard).run('seed', { name, timeZone, place: null, demo: true, people });
  if (!founded.ok) throw new Error(`The demo yard cannot be made: ${JSON.stringify(founded.problem)}`);
}

/** Brings the demo yard to what seeds/seed.ts says; does nothing where there is no demo, or it is full already. */
async function fillDemo(app: INestApplicationContext): Promise<void> {
  const signIn = app.get(SignIn);
  const ids: Partial<Record<DemoPerson['key'], string>> = {};
  for (const { key, email } of DEMO_PEOPLE) {
    const id = await signIn.findPerson(email);
    if (id === null) return;
    ids[key] = id;
  }
  const personIdOf = ids as Record<DemoPerson['key'], string>;
  const standing = await app.get(FindCaller).run(personIdOf.owner, null);
  if (standing === null) return;
  const clock = app.get(Clock);
  const caller: Caller = { ...standing, door: 'seed', today: clock.today(standing.timeZone), now: clock.now() };
  await seedDemo(app, { caller, personIdOf });
}

/** Four groups that can be read aloud and typed on a phone; 16 of 31 letters, 79 random bits. */
function speakablePassword(): string {
  const letters = 'abcdefghjkmnpqrstuvwxyz23456789';
  const one = () => letters[randomInt(letters.length)] ?? '';
  return Array.from({ length: 4 }, () => one() + one() + one() + one()).join('-');
}
