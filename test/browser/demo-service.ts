import { DEMO_PEOPLE } from '../../seeds/demo/people.js';
import { firstStart } from '../../src/first-start.js';
import { startApp } from '../support/app.js';

/** The whole service with its demo yard, listening on a port of its own. */
export async function startDemo() {
  const service = await startApp();
  const said: string[] = [];
  await firstStart(service.app, service.databaseUrl, (line) => said.push(line));
  const password = /password: (.+)$/m.exec(said.join('\n'))?.[1];
  const owner = DEMO_PEOPLE.find(({ role }) => role === 'owner')?.email;
  if (password === undefined || owner === undefined) throw new Error(`no sign-in was told:\n${said.join('\n')}`);
  await service.app.listen(0, '127.0.0.1');
  const address = await service.app.getUrl();
  return { ...service, address, owner, password };
}

export type DemoService = Awaited<ReturnType<typeof startDemo>>;
