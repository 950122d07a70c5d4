import { DEMO_PEOPLE, DEMO_YARD } from '../../seeds/demo/people.js';
import { firstStart } from '../../src/first-start.js';
import { Database } from '../../src/store/database.js';
import { PlanYardDay } from '../../src/use-cases/notices/plan-yard-day.js';
import { startApp } from '../support/app.js';

/** The whole service with its demo yard, listening on a port of its own. */
export async function startDemo() {
  const service = await startApp();
  const said: string[] = [];
  await firstStart(service.app, service.databaseUrl, (line) => said.push(line));
  const password = /password: (.+)$/m.exec(said.join('\n'))?.[1];
  const owner = DEMO_PEOPLE.find(({ role }) => role === 'owner')?.email;
  if (password === undefined || owner === undefined) throw new Error(`no sign-in was told:\n${said.join('\n')}`);
  await planDay(service);
  await service.app.listen(0, '127.0.0.1');
  const address = await service.app.getUrl();
  return { ...service, address, owner, password };
}

/** Writes the letters of the day, as the timer would, so that there are notices to look at. */
async function planDay({ app, clock }: Awaited<ReturnType<typeof startApp>>): Promise<void> {
  const { timeZone } = DEMO_YARD;
  const [yardId = ''] = await app.get(Database, { strict: false }).yardIds();
  const now = { now: clock.now(), today: clock.today(timeZone), timeZone };
  await app.get(PlanYardDay).run({ yardId, personId: null, name: 'the timer', role: 'owner', door: 'job', ...now });
}

export type DemoService = Awaited<ReturnType<typeof startDemo>>;
