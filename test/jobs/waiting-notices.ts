import pg from 'pg';
import { newId } from '../../src/store/new-id.js';

/** A yard of one person and notices that may go out at once, written as a use case leaves them. */
export async function waitingNotices(url: string, count: number): Promise<readonly string[]> {
  const yardId = newId();
  const personId = newId();
  const ids = Array.from({ length: count }, newId);
  await asOwner(url, async (owner) => {
    await owner.query("insert into yard (id, name, slug, time_zone) values ($1, 'Kill Yard', $2, 'Etc/UTC')", [
      yardId,
      `yard-${yardId}`,
    ]);
    await owner.query('insert into person (id, name, email, updated_at) values ($1, $2, $3, now())', [
      personId,
      'Marta Ostrow',
      `${personId}@ostrow.example`,
    ]);
    await owner.query(
      `insert into membership (id, yard_id, person_id, role, name, email)
       values ($1, $2, $3, 'owner', 'Marta Ostrow', 'marta@ostrow.example')`,
      [newId(), yardId, personId],
    );
    for (const id of ids) {
      await owner.query(
        `insert into notice (id, yard_id, person_id, kind, key, to_name, to_email, subject, body_text, body_html,
           message_id, not_before)
         values ($1::uuid, $2, $3, 'day', $1::text, 'Marta Ostrow', 'marta@ostrow.example', $1::text,
           'Repack the hubs.', '<p>Repack the hubs.</p>', '<' || $1::text || '@ostrow.example>', now())`,
        [id, yardId, personId],
      );
    }
  });
  return ids;
}

export interface NoticeState {
  readonly id: string;
  readonly state: string;
  readonly message_id: string;
}

export async function noticeStates(url: string): Promise<readonly NoticeState[]> {
  return asOwner(url, async (owner) => {
    const { rows } = await owner.query<NoticeState>('select id, state, message_id from notice order by id');
    return rows;
  });
}

async function asOwner<T>(url: string, work: (owner: pg.Client) => Promise<T>): Promise<T> {
  const owner = new pg.Client(url);
  await owner.connect();
  try {
    return await work(owner);
  } finally {
    await owner.end();
  }
}
