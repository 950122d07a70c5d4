import { Injectable, Logger, type OnApplicationShutdown } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import pg from 'pg';
import { z } from 'zod';
import { Config } from '../../config.js';
import { SendResetLetter } from '../../use-cases/people/send-reset-letter.js';
import { Clock } from '../clock.js';
import { CLIENT_ADDRESS_HEADER } from './client-address.js';
import { RESET_HOURS, type SignInLibrary, signInLibrary } from './sign-in-library.js';

/** A person who has signed in, and the yard that session works in. */
export interface SignedInPerson {
  readonly personId: string;
  readonly name: string;
  readonly email: string;
  readonly yardId: string | null;
  /** Names the session to the library. Never written anywhere else. */
  readonly sessionToken: string;
}

/** Cookies to hand to the browser, as they stand in `set-cookie`. */
export type Cookies = readonly string[];

export type SignInAnswer =
  | { readonly kind: 'done'; readonly personId: string; readonly cookies: Cookies }
  /** Wrong address or password; which of the two is not told. */
  | { readonly kind: 'wrong' }
  | { readonly kind: 'taken' }
  | { readonly kind: 'too-many'; readonly waitSeconds: number };

export type ResetAnswer =
  | { readonly kind: 'done' }
  | { readonly kind: 'link-too-old' }
  | { readonly kind: 'too-many'; readonly waitSeconds: number };

/** The part of the library's answers that is used. */
const ANSWER = z.object({ code: z.string().optional(), user: z.object({ id: z.string() }).optional() });

/** Sign-in as the rest of the service sees it. The library behind it, its tables and its tokens stay in this folder. */
@Injectable()
export class SignIn implements OnApplicationShutdown {
  readonly #log = new Logger(SignIn.name);
  readonly #pool: pg.Pool;
  readonly #library: SignInLibrary;
  readonly #baseUrl: string;
  /** Letters under way, so that the end of the service waits for them. */
  readonly #letters = new Set<Promise<void>>();

  constructor(
    config: Config,
    private readonly clock: Clock,
    private readonly sendResetLetter: SendResetLetter,
  ) {
    if (config.databaseUrl === null || config.secret === null) {
      throw new Error('Sign-in needs a database and a secret; main gives both before it builds the app');
    }
    this.#baseUrl = config.baseUrl;
    // Takes on its own role before the first query: the only one that may read sessions and passwords.
    this.#pool = new pg.Pool({
      connectionString: config.databaseUrl,
      options: '-c role=axlebook_auth',
      application_name: 'axlebook sign-in',
      max: 5,
    });
    this.#pool.on('error', (error) => this.#log.warn({ err: error }, 'A sign-in connection ended'));
    this.#library = signInLibrary({
      pool: this.#pool,
      baseUrl: config.baseUrl,
      secret: config.secret,
      sendReset: (to, token) => this.#mailReset(to, token),
      warn: (message) => this.#log.warn(message),
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await Promise.allSettled(this.#letters);
    await this.#pool.end();
  }

  /** Who the request's cookie belongs to, or null. `cookies` is not empty when the session was prolonged. */
  async personOf(request: FastifyRequest): Promise<{ person: SignedInPerson; cookies: Cookies } | null> {
    if (request.headers.cookie === undefined) return null;
    const { response, headers } = await this.#library.api.getSession({
      headers: new Headers({ cookie: request.headers.cookie }),
      returnHeaders: true,
    });
    if (response === null) return null;
    const { session, user } = response;
    const person = {
      personId: user.id,
      name: user.name,
      email: user.email,
      yardId: session.yardId ?? null,
      sessionToken: session.token,
    };
    return { person, cookies: headers.getSetCookie() };
  }

  async signIn(request: FastifyRequest, email: string, password: string): Promise<SignInAnswer> {
    return this.#enter(await this.#ask(request, '/sign-in/email', { email, password, rememberMe: true }));
  }

  /** Makes a person and signs them in. Whoever calls this has decided that they may have an account. */
  async signUp(request: FastifyRequest, who: { name: string; email: string; password: string }): Promise<SignInAnswer> {
    return this.#enter(await this.#ask(request, '/sign-up/email', who));
  }

  /** Ends the session; the cookies returned empty the browser's. */
  async signOut(request: FastifyRequest): Promise<Cookies> {
    return (await this.#ask(request, '/sign-out', {})).headers.getSetCookie();
  }

  /** Mails a link to set a new password, if somebody has that address. The answer is the same if nobody has. */
  async forgot(request: FastifyRequest, email: string): Promise<ResetAnswer> {
    const answer = await this.#ask(request, '/request-password-reset', { email });
    return answer.status === 429 ? tooMany(answer) : { kind: 'done' };
  }

  /** Sets a new password by a mailed link and ends every session of that person. A link works once. */
  async reset(request: FastifyRequest, token: string, newPassword: string): Promise<ResetAnswer> {
    const answer = await this.#ask(request, '/reset-password', { token, newPassword });
    if (answer.status === 429) return tooMany(answer);
    return answer.ok ? { kind: 'done' } : { kind: 'link-too-old' };
  }

  /** Who signs in with this address, or null. Tell it only to those who proved that the address is theirs. */
  async findPerson(email: string): Promise<string | null> {
    const { internalAdapter } = await this.#library.$context;
    return (await internalAdapter.findUserByEmail(email.toLowerCase()))?.user.id ?? null;
  }

  /** From now on this session works in another yard. The caller has checked that the person belongs to it. */
  async workIn(sessionToken: string, yardId: string): Promise<void> {
    const { internalAdapter } = await this.#library.$context;
    await internalAdapter.updateSession(sessionToken, { yardId });
  }

  /** Makes a person who signs in later, and returns their id. One who exists already gets this password. */
  async makePerson(who: { name: string; email: string; password: string }): Promise<string> {
    const { internalAdapter, password } = await this.#library.$context;
    const hash = await password.hash(who.password);
    const found = await this.findPerson(who.email);
    if (found !== null) {
      await internalAdapter.updatePassword(found, hash);
      return found;
    }
    const { id } = await internalAdapter.createUser(
      { name: who.name, email: who.email.toLowerCase(), emailVerified: false },
      { method: 'email-password' },
    );
    await internalAdapter.linkAccount({ userId: id, providerId: 'credential', accountId: id, password: hash });
    return id;
  }

  /** Asks the library as its own pages would, so that its tries are counted and its origin check is satisfied by ours. */
  #ask(request: FastifyRequest, path: string, body: Record<string, unknown>): Promise<Response> {
    const headers = new Headers({
      'content-type': 'application/json',
      origin: new URL(this.#baseUrl).origin,
      [CLIENT_ADDRESS_HEADER]: request.ip,
      'user-agent': (request.headers['user-agent'] ?? '').slice(0, 300),
    });
    if (request.headers.cookie !== undefined) headers.set('cookie', request.headers.cookie);
    return this.#library.handler(
      new Request(`${this.#baseUrl}/sign-in-library${path}`, { method: 'POST', headers, body: JSON.stringify(body) }),
    );
  }

  async #enter(answer: Response): Promise<SignInAnswer> {
    if (answer.status === 429) return tooMany(answer);
    const told = ANSWER.parse(await answer.json());
    if (told.code === 'USER_ALREADY_EXISTS_USE_ANOTHER_EMAIL') return { kind: 'taken' };
    if (answer.status === 400 || answer.status === 401) return { kind: 'wrong' };
    if (!answer.ok || told.user === undefined) throw new Error(`Sign-in answered ${answer.status} ${told.code ?? ''}`);
    return { kind: 'done', personId: told.user.id, cookies: answer.headers.getSetCookie() };
  }

  #mailReset(to: { name: string; email: string }, token: string): void {
    const url = `${this.#baseUrl}/reset-password?token=${encodeURIComponent(token)}`;
    const letter = this.sendResetLetter
      .run({ ...to, url, validHours: RESET_HOURS, now: this.clock.now() })
      .catch((error: unknown) => this.#log.error({ err: error }, 'A reset letter could not be sent'))
      .finally(() => this.#letters.delete(letter));
    this.#letters.add(letter);
  }
}

function tooMany(answer: Response): { kind: 'too-many'; waitSeconds: number } {
  return { kind: 'too-many', waitSeconds: Number(answer.headers.get('x-retry-after') ?? 60) };
}
