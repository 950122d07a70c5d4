import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { CreateApiKey } from '../../src/use-cases/people/create-api-key.js';
import type { Member, StandingClock, TestApp, YardOfTest } from './app.js';

export interface ApiAnswer {
  readonly status: number;
  readonly json: unknown;
  readonly text: string;
  readonly headers: Readonly<Record<string, unknown>>;
}

let requests = 0;

/** A program that speaks to the API with a key, or with none. */
export class ApiClient {
  constructor(
    private readonly app: NestFastifyApplication,
    readonly key: string | null,
  ) {}

  async send(method: string, path: string, body?: unknown): Promise<ApiAnswer> {
    // From an address of its own each time: requests from one address are counted.
    requests += 1;
    const answer = await this.app.inject({
      method: method as 'GET',
      url: path,
      remoteAddress: `10.1.${Math.floor(requests / 250) % 250}.${requests % 250}`,
      headers: {
        ...(this.key === null ? {} : { authorization: `Bearer ${this.key}` }),
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { payload: JSON.stringify(body) }),
    });
    const isJson = String(answer.headers['content-type']).startsWith('application/json');
    const json: unknown = isJson && answer.body !== '' ? JSON.parse(answer.body) : null;
    return { status: answer.statusCode, json, text: answer.body, headers: answer.headers };
  }

  /** What a request that must succeed was answered. */
  async must<T>(method: string, path: string, body?: unknown): Promise<T> {
    const answer = await this.send(method, path, body);
    if (answer.status >= 300) throw new Error(`${method} ${path}: ${answer.status} ${answer.text}`);
    return answer.json as T;
  }
}

/** A key of somebody of the yard. */
async function keyOf(service: TestApp, yard: YardOfTest, member: Member): Promise<string> {
  const { clock } = service as { readonly clock: StandingClock };
  const timeZone = 'America/Chicago';
  const made = await service.app.get(CreateApiKey).run(
    {
      yardId: yard.yardId,
      personId: member.id,
      name: member.name,
      role: member.role,
      door: 'page',
      today: clock.today(timeZone),
      now: clock.now(),
      timeZone,
    },
    { name: 'a program' },
  );
  if (!made.ok) throw new Error(JSON.stringify(made.problem));
  return made.value.key;
}

export async function clientOf(service: TestApp, yard: YardOfTest, member: Member): Promise<ApiClient> {
  return new ApiClient(service.app, await keyOf(service, yard, member));
}
