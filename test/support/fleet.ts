import type pg from 'pg';
import type { CivilDate } from '../../src/rules/calendar/civil-date.js';

/** Recorded hauls of each trailer. */
const TRIPS = 30;

/**
 * Fills a yard with so many trailers at one go, as a large yard stands on a working day: T-1, T-2 … with plates, builds,
 * hauls and kept results; every fifth has a job that starts this week, every tenth one that ends in it, every fortieth
 * is on hold. Results are written as they would be kept, not worked out: these are for lists that read them.
 */
export async function fillFleet(owner: pg.Pool, yardId: string, count: number, today: CivilDate): Promise<void> {
  const written = { yard: `'${yardId}'::uuid`, today: `'${today}'::date` };
  const run = (text: string) =>
    owner.query(text.replace(/:(yard|today)\b/g, (_, name: keyof typeof written) => written[name]));
  await run('create temp table if not exists fleet (id uuid, yard_id uuid, n int)');
  await run('truncate fleet');
  await run(`insert into trailer (id, yard_id, yard_number, name, registration_plate)
    select gen_random_uuid(), :yard, 'T-' || n, 'Deckover ' || n, 'PL ' || 1000 + n
    from generate_series(1, ${count}) n`);
  await run(`insert into fleet select id, yard_id, substring(yard_number from 3)::int from trailer
    where yard_id = :yard`);
  await run(`insert into build_sheet (id, yard_id, trailer_id, effective_from, gvwr_kg, empty_mass_kg, door)
    select gen_random_uuid(), yard_id, id, :today - 900, 6350, 1700, 'seed' from fleet`);
  await run(`insert into trip (id, yard_id, trailer_id, started_on, ended_on, distance_km, scale_axle_n, door)
    select gen_random_uuid(), yard_id, id, :today - 7 * k, :today - 7 * k, 60, '{}', 'seed'
    from fleet, generate_series(1, ${TRIPS}) k`);
  await run(`insert into job (id, yard_id, trailer_id, name, starts_on, ends_on, distance_km, scale_axle_n, door)
    select gen_random_uuid(), yard_id, id, 'Out ' || n, :today + n / 5 % 7, :today + n / 5 % 7 + 2, 80, '{}'::float8[], 'seed'
    from fleet where n % 5 = 0
    union all
    select gen_random_uuid(), yard_id, id, 'Back ' || n, :today - 4, :today + n / 10 % 7, 80, '{}'::float8[], 'seed'
    from fleet where n % 10 = 1`);
  await run(`insert into hold (id, yard_id, trailer_id, opened_on, reason, opened_by_name)
    select gen_random_uuid(), yard_id, id, :today - 1, 'Spring hanger cracked', 'The shop' from fleet where n % 40 = 0`);
  await run(`insert into trailer_result (trailer_id, yard_id, as_of, readiness, stop_flags, limit_flags, watch_flags,
      overdue, payload_kg, trailer_class, assessment)
    select id, yard_id, :today, case when n % 40 = 0 then 'down' when n % 3 = 0 then 'due' else 'ready' end, 0, 0, 0,
      (n % 3 = 0)::int, 4650, (array['light', 'medium', 'heavy'])[1 + n % 3], '{}' from fleet`);
  await run(`insert into due_result (yard_id, trailer_id, check_kind_id, code, state, due_on, due)
    select f.yard_id, f.id, k.id, k.code, s.state, s.due_on, jsonb_build_object('checkKindId', k.id, 'code', k.code,
      'state', s.state, 'dueOn', s.due_on, 'trigger', null, 'lastDoneOn', null, 'used', null, 'range', null,
      'stops', null, 'firstJobAtRisk', null, 'yardDays', '[]'::jsonb, 'unknown', null, 'failed', false)
    from fleet f join check_kind k on k.yard_id = f.yard_id
    cross join lateral (select case when f.n % 3 = 0 and length(k.code) % 5 = 0 then 'overdue' else 'later' end state,
      case when f.n % 3 = 0 and length(k.code) % 5 = 0 then :today - f.n % 9 else :today + (7 * f.n + 11 * length(k.name)) % 200 end due_on) s`);
  await owner.query('analyze');
}
