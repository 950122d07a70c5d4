import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startUseCases, type UseCases, type Yard } from '../support/yard.js';
import { type Case, everyUseCase } from './every-use-case.js';

/** The folders of facts; people, notices and screens have their own tests. */
const FOLDERS = [
  'assessments',
  'checks',
  'handovers',
  'holds',
  'jobs',
  'machines',
  'readings',
  'trailers',
  'trips',
  'yard',
];

let service: UseCases;
let yard: Yard;
let cases: readonly Case[];

beforeAll(async () => {
  service = await startUseCases();
  ({ yard, cases } = await everyUseCase(service));
});

afterAll(() => service.close());

describe('whatever a door hands in', () => {
  it('every use case that records facts is in these tests', () => {
    const written = FOLDERS.flatMap((folder) =>
      readdirSync(`src/use-cases/${folder}`)
        .map((file) => readFileSync(`src/use-cases/${folder}/${file}`, 'utf8'))
        .filter((text) => text.includes('@Injectable('))
        .map((text) => /export class (\w+)/.exec(text)?.[1]),
    );
    expect(cases.map((one) => one.useCase.name).sort()).toEqual(written.sort());
  });

  it('each bad field is refused by name with its fix, and not one row changes', async () => {
    const before = await fingerprint();
    const tries = cases.flatMap(({ useCase, input }) => spoiled(input ?? {}).map((one) => ({ useCase, ...one })));
    const wrong: string[] = [];
    for (let start = 0; start < tries.length; start += AT_ONCE) {
      const some = tries.slice(start, start + AT_ONCE);
      wrong.push(...(await Promise.all(some.map(whatIsWrong))).filter((one) => one !== null));
    }
    expect(wrong).toEqual([]);
    expect(tries.length).toBeGreaterThan(800);
    expect(await fingerprint()).toEqual(before);
  }, 900_000);

  it('an id of nothing in the yard is refused, and not one row changes', async () => {
    const wrong: string[] = [];
    const before = await fingerprint();
    for (const { useCase, input } of cases) {
      for (const { path, bad } of idsOfNothing(input ?? {})) {
        const outcome = await service.get(useCase).run(yard.as('owner'), bad as never);
        const isRefused = !outcome.ok && (outcome.problem.kind === 'not-found' || outcome.problem.kind === 'invalid');
        if (!isRefused) wrong.push(`${useCase.name} with an unknown ${path}: ${JSON.stringify(outcome)}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(await fingerprint()).toEqual(before);
  });

  it('ids of another yard are as good as none', async () => {
    const other = await service.makeYard({ name: 'Ostrow Fencing' });
    const before = await fingerprint();
    for (const { useCase, input } of cases) {
      if (input === null || !JSON.stringify(input).includes('Id":')) continue;
      const outcome = await service.get(useCase).run(other.as('owner'), input as never);
      expect(outcome.ok, `${useCase.name} reached into another yard`).toBe(false);
    }
    expect(await fingerprint()).toEqual(before);
  });

  it('the same inputs unspoiled are accepted', async () => {
    for (const { useCase, input } of cases) {
      const outcome = await service.get(useCase).run(yard.as('owner'), (input ?? undefined) as never);
      expect(outcome, useCase.name).toMatchObject({ ok: true });
    }
  });
});

/** As many as the service has connections, nearly. */
const AT_ONCE = 8;

/** What is wrong with the answer to a bad input; null when it names the field and the fix. */
async function whatIsWrong({ useCase, path, bad, value }: Spoiled & Pick<Case, 'useCase'>): Promise<string | null> {
  const outcome = await service.get(useCase).run(yard.as('owner'), bad as never);
  const says = `${useCase.name} with ${path} = ${show(value)}`;
  if (outcome.ok) return `${says} was accepted`;
  if (outcome.problem.kind !== 'invalid') return `${says}: ${outcome.problem.kind}`;
  const named = outcome.problem.fields.find(({ field }) => isAbout(field, path));
  if (named === undefined) return `${says} names only ${outcome.problem.fields.map((one) => one.field)}`;
  return /^[A-Z"].{12,}[.]$/s.test(named.message) ? null : `${says} says only: ${named.message}`;
}

/** The rows of every table of the yard, as one checksum a table. */
async function fingerprint(): Promise<Record<string, string>> {
  const tables = await service.sql<{ name: string }>(
    `select table_name as name from information_schema.columns
     where table_schema = 'public' and column_name = 'yard_id' order by 1`,
  );
  const sums: Record<string, string> = {};
  for (const { name } of tables) {
    const [row] = await service.sql<{ rows: string }>(
      `select count(*) || ' ' || coalesce(md5(string_agg(row::text, '|' order by row::text)), '') as rows from "${name}" row`,
    );
    sums[name] = row?.rows ?? '';
  }
  return sums;
}

interface Spoiled {
  readonly path: string;
  readonly bad: object;
  readonly value: unknown;
}

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The input with one field made bad at a time, and with a field nobody knows at every level. */
function spoiled(input: object): readonly Spoiled[] {
  return places(input).flatMap(({ path, value, put }) =>
    badValues(value).map((bad) => ({ path: bad === STRAY ? `${path}.gvwrLb` : path, bad: put(bad), value: bad })),
  );
}

const STRAY = Symbol('a field of a name nobody knows');

function badValues(value: unknown): readonly unknown[] {
  if (typeof value === 'number') return [Number.NaN, 1e15, -1e15, 'twelve'];
  if (typeof value === 'boolean') return ['yes', 1];
  if (typeof value === 'string') {
    if (ID.test(value)) return ['T-07', `${value}'`, 7];
    if (DAY.test(value)) return ['2025-02-29', '16.6.2025', '1025-06-16', 7];
    return ['x'.repeat(5_000), 'a\u0000b', 7];
  }
  if (Array.isArray(value)) return [7, 'some', {}, Array.from({ length: 500 }, () => value[0] ?? 0)];
  if (typeof value === 'object' && value !== null) return [7, 'some', [], STRAY];
  return [];
}

interface Place {
  readonly path: string;
  readonly value: unknown;
  readonly put: (bad: unknown) => object;
}

function places(input: object): readonly Place[] {
  const found: Place[] = [];
  const visit = (value: unknown, path: string, put: (bad: unknown) => object) => {
    if (path !== '')
      found.push({ path, value, put: (bad) => put(bad === STRAY ? { ...(value as object), gvwrLb: 1 } : bad) });
    if (Array.isArray(value)) {
      value.forEach((entry, place) => {
        const inObject = typeof entry === 'object';
        visit(entry, inObject ? `${path}[${place}]` : `${path}.${place}`, (bad) =>
          put(value.map((one, at) => (at === place ? bad : one))),
        );
      });
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, one] of Object.entries(value)) {
        visit(one, path === '' ? key : `${path}.${key}`, (bad) => put({ ...value, [key]: bad }));
      }
    }
  };
  visit(input, '', (bad) => bad as object);
  return found;
}

function idsOfNothing(input: object): readonly Spoiled[] {
  const nobody = '0197a000-0000-7000-8000-000000000000';
  return places(input)
    .filter(({ value }) => typeof value === 'string' && ID.test(value))
    .map(({ path, put }) => ({ path, bad: put(nobody), value: nobody }));
}

/** A problem of a list may be named at the list, one of a choice list at the whole of it. */
function isAbout(field: string, path: string): boolean {
  return field === path || path.startsWith(`${field}.`) || path.startsWith(`${field}[`) || field.startsWith(path);
}

function show(value: unknown): string {
  const text = typeof value === 'symbol' ? String(value) : (JSON.stringify(value) ?? String(value));
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
