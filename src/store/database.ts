import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import { fromColumn } from './civil-day.js';
import { type Prisma, PrismaClient } from './generated/client.js';

/** One transaction inside one yard: no row of another yard can be seen, written or named through it. */
export type YardTx = Prisma.TransactionClient & { readonly yardId: string };

/** A place a person may work, for whoever signs in. */
export interface YardOfPerson {
  readonly yardId: string;
  readonly yardName: string;
  readonly role: 'owner' | 'shop' | 'hand' | 'viewer';
  /** Set when the person no longer belongs to the yard. */
  readonly leftOn: CivilDate | null;
}

const CONNECTIONS = 10;
/** A yard's policy change assesses all its trailers in one transaction; beyond this something is stuck. */
const LONGEST_TRANSACTION_MS = 120_000;
const LONGEST_WAIT_FOR_CONNECTION_MS = 15_000;

/**
 * The service's way to Postgres. Every connection works as the role `axlebook_service`, which sees no row until a yard
 * is set, whoever the connection string names.
 */
@Injectable()
export class Database implements OnModuleDestroy {
  private readonly pool: pg.Pool;
  private readonly prisma: PrismaClient;

  constructor(url: string, connections: number = CONNECTIONS) {
    this.pool = new pg.Pool({ connectionString: url, max: connections, options: '-c role=axlebook_service' });
    // An idle connection that breaks (the server restarts) is replaced at the next query; it must not end the service.
    this.pool.on('error', () => undefined);
    this.prisma = new PrismaClient({ adapter: new PrismaPg(this.pool, { statementNameGenerator: statementName }) });
  }

  /** Runs `work` in one transaction that sees one yard. All of it is kept, or none when it throws. */
  async inYard<T>(yardId: string, work: (tx: YardTx) => Promise<T>): Promise<T> {
    return this.prisma.$transaction(
      async (tx) => {
        await tx.$queryRaw`select set_config('app.yard', ${yardId}, true)`;
        // Defined, not assigned: what is assigned lands on the client that all transactions share.
        return work(Object.create(tx, { yardId: { value: yardId } }) as YardTx);
      },
      { timeout: LONGEST_TRANSACTION_MS, maxWait: LONGEST_WAIT_FOR_CONNECTION_MS },
    );
  }

  async yardIds(): Promise<readonly string[]> {
    return ids(await this.prisma.$queryRaw<IdRow[]>`select id::text from yard_ids() id`);
  }

  /** Yards with a trailer whose wake date has come, by each yard's own clock. */
  async yardsToWake(at: Date): Promise<readonly string[]> {
    return ids(await this.prisma.$queryRaw<IdRow[]>`select id::text from yards_to_wake(${at}::timestamptz) id`);
  }

  /** Yards where it is past the plan hour of a day whose letters nobody has planned. */
  async yardsToPlan(at: Date): Promise<readonly string[]> {
    return ids(await this.prisma.$queryRaw<IdRow[]>`select id::text from yards_to_plan(${at}::timestamptz) id`);
  }

  /** Yards with a notice that may be sent at `at`. */
  async yardsWithWaitingNotices(at: Date): Promise<readonly string[]> {
    return ids(
      await this.prisma.$queryRaw<IdRow[]>`select id::text from yards_with_waiting_notices(${at}::timestamptz) id`,
    );
  }

  async yardsOfPerson(personId: string): Promise<readonly YardOfPerson[]> {
    const rows = await this.prisma.$queryRaw<
      { yard_id: string; yard_name: string; role: YardOfPerson['role']; left_on: Date | null }[]
    >`select * from memberships_of(${personId}::uuid)`;
    return rows.map((row) => ({
      yardId: row.yard_id,
      yardName: row.yard_name,
      role: row.role,
      leftOn: fromColumn(row.left_on),
    }));
  }

  /** Whose key has this hash; null for none, or one that was revoked. */
  async apiTokenOf(tokenHash: string): Promise<{ id: string; yardId: string; personId: string } | null> {
    const rows = await this.prisma.$queryRaw<
      { id: string; yard_id: string; person_id: string }[]
    >`select * from api_token_of(${tokenHash})`;
    const row = rows[0];
    return row ? { id: row.id, yardId: row.yard_id, personId: row.person_id } : null;
  }

  /** Which yard's invitation has this hash; read the rest of it in that yard. */
  async invitationOf(tokenHash: string): Promise<{ id: string; yardId: string } | null> {
    const rows = await this.prisma.$queryRaw<
      { id: string; yard_id: string }[]
    >`select * from invitation_of(${tokenHash})`;
    const row = rows[0];
    return row ? { id: row.id, yardId: row.yard_id } : null;
  }

  async onModuleDestroy(): Promise<void> {
    await this.prisma.$disconnect();
    await this.pool.end();
  }
}

/**
 * Put into the text of a query that takes Postgres longer to plan than to run: each connection then plans it once.
 * Only for texts of which there are few, because every one stays in the memory of every connection.
 */
export const PLANNED_ONCE = '/* planned once */';

const statementNames = new Map<string, string>();

/** The empty name is the one that Postgres forgets. */
function statementName({ sql }: { readonly sql: string }): string {
  if (!sql.includes(PLANNED_ONCE)) return '';
  const name = statementNames.get(sql) ?? `planned_${statementNames.size}`;
  statementNames.set(sql, name);
  return name;
}

interface IdRow {
  readonly id: string;
}

function ids(rows: readonly IdRow[]): readonly string[] {
  return rows.map((row) => row.id);
}
