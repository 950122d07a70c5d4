import { randomUUID } from 'node:crypto';
import { betterAuth } from 'better-auth';
import type pg from 'pg';
import { PASSWORD_LEAST, PASSWORD_MOST } from '../../use-cases/people/read-password.js';
import { CLIENT_ADDRESS_HEADER } from './client-address.js';

const DAY_SECONDS = 86_400;

/** Tries to sign in from one address in five minutes. Our choice: 240 guesses an hour find no ten-character password. */
export const SIGN_IN_TRIES = 20;
/** How long a link to set a new password works. Our choice: long enough for slow mail, short for a lost phone. */
export const RESET_HOURS = 2;

interface LibrarySettings {
  readonly pool: pg.Pool;
  readonly baseUrl: string;
  readonly secret: string;
  /** Hands over a link to set a new password. Not awaited by the asker, who must not learn whether the address is known. */
  readonly sendReset: (to: { readonly name: string; readonly email: string }, token: string) => void;
  readonly warn: (message: string) => void;
}

/**
 * The library behind sign-in: passwords (scrypt), sessions, reset links and the count of tries. Its own endpoints are
 * not reachable from outside; our pages call it, so that sign-up and the rest stay behind our own rules.
 */
export function signInLibrary({ pool, baseUrl, secret, sendReset, warn }: LibrarySettings) {
  return betterAuth({
    appName: 'Axlebook',
    baseURL: baseUrl,
    basePath: '/sign-in-library',
    secret,
    database: pool,
    trustedOrigins: [new URL(baseUrl).origin],
    telemetry: { enabled: false },
    logger: { level: 'warn', log: (_level, message) => warn(message) },
    emailAndPassword: {
      enabled: true,
      minPasswordLength: PASSWORD_LEAST,
      maxPasswordLength: PASSWORD_MOST,
      autoSignIn: true,
      revokeSessionsOnPasswordReset: true,
      resetPasswordTokenExpiresIn: RESET_HOURS * 3600,
      sendResetPassword: async ({ user, token }) => sendReset({ name: user.name, email: user.email }, token),
    },
    rateLimit: {
      enabled: true,
      storage: 'database',
      modelName: 'rate_limit',
      fields: { lastRequest: 'last_request' },
      window: 60,
      max: 60,
      // Counted for each address, by every copy of the service together, right tries too: a yard's people often share
      // one address, and all of them must be able to come in on the same morning.
      customRules: {
        '/sign-in/email': { window: 300, max: SIGN_IN_TRIES },
        '/sign-up/email': { window: 3600, max: 10 },
        '/request-password-reset': { window: 3600, max: 5 },
        '/reset-password': { window: 3600, max: 10 },
      },
    },
    user: {
      modelName: 'person',
      fields: { emailVerified: 'email_verified', createdAt: 'created_at', updatedAt: 'updated_at' },
    },
    session: {
      modelName: 'session',
      expiresIn: 30 * DAY_SECONDS,
      updateAge: DAY_SECONDS,
      fields: {
        userId: 'person_id',
        expiresAt: 'expires_at',
        ipAddress: 'ip_address',
        userAgent: 'user_agent',
        createdAt: 'created_at',
        updatedAt: 'updated_at',
      },
      additionalFields: { yardId: { type: 'string', required: false, input: false, fieldName: 'yard_id' } },
    },
    account: {
      modelName: 'sign_in_account',
      accountLinking: { enabled: false },
      fields: {
        userId: 'person_id',
        accountId: 'account_id',
        providerId: 'provider_id',
        accessToken: 'access_token',
        refreshToken: 'refresh_token',
        idToken: 'id_token',
        accessTokenExpiresAt: 'access_token_expires_at',
        refreshTokenExpiresAt: 'refresh_token_expires_at',
        createdAt: 'created_at',
        updatedAt: 'updated_at',
      },
    },
    verification: {
      modelName: 'verification',
      storeIdentifier: 'hashed',
      fields: { expiresAt: 'expires_at', createdAt: 'created_at', updatedAt: 'updated_at' },
    },
    advanced: {
      cookiePrefix: 'axlebook',
      useSecureCookies: baseUrl.startsWith('https:'),
      defaultCookieAttributes: { httpOnly: true, sameSite: 'lax' },
      ipAddress: { ipAddressHeaders: [CLIENT_ADDRESS_HEADER] },
      // The columns are the migrations' business, and its own role may not look at the catalogue.
      database: { generateId: () => randomUUID(), validateSchema: false },
    },
  });
}

export type SignInLibrary = ReturnType<typeof signInLibrary>;
