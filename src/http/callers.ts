import { Injectable } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { Caller, Door } from '../use-cases/caller.js';
import { FindCaller } from '../use-cases/people/find-caller.js';
import { FindKeyHolder } from '../use-cases/people/find-key-holder.js';
import type { Standing } from '../use-cases/people/standing.js';
import { Clock } from './clock.js';
import { type Cookies, SignIn } from './sign-in/sign-in.js';

export type Found =
  | { readonly kind: 'caller'; readonly caller: Caller; readonly cookies: Cookies }
  /** Signed in, but belongs to no yard, or left it. */
  | { readonly kind: 'no-yard'; readonly cookies: Cookies }
  | { readonly kind: 'nobody' };

const NOBODY: Found = { kind: 'nobody' };

/** Finds out who sent a request: by the API key it shows, or else by its session cookie. */
@Injectable()
export class Callers {
  constructor(
    private readonly signIn: SignIn,
    private readonly findCaller: FindCaller,
    private readonly findKeyHolder: FindKeyHolder,
    private readonly clock: Clock,
  ) {}

  async find(request: FastifyRequest, door: Door): Promise<Found> {
    const { authorization } = request.headers;
    if (authorization !== undefined) return door === 'api' ? this.#byKey(authorization) : NOBODY;
    const found = await this.signIn.personOf(request);
    if (found === null) return NOBODY;
    const { person, cookies } = found;
    const standing = await this.findCaller.run(person.personId, person.yardId);
    if (standing === null) return { kind: 'no-yard', cookies };
    if (standing.yardId !== person.yardId) await this.signIn.workIn(person.sessionToken, standing.yardId);
    return { kind: 'caller', caller: this.#callerOf(standing, door), cookies };
  }

  async #byKey(authorization: string): Promise<Found> {
    const key = /^Bearer +(\S+)$/i.exec(authorization)?.[1];
    if (key === undefined) return NOBODY;
    const standing = await this.findKeyHolder.run(key, this.clock.now());
    return standing === null ? NOBODY : { kind: 'caller', caller: this.#callerOf(standing, 'api'), cookies: [] };
  }

  #callerOf(standing: Standing, door: Door): Caller {
    const { yardId, personId, name, role, timeZone } = standing;
    return { yardId, personId, name, role, door, today: this.clock.today(timeZone), now: this.clock.now(), timeZone };
  }
}
