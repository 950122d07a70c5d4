/** One input with one thing wrong in it. */
export interface Spoiled {
  /** Where: `load.cargo[0].massKg`. */
  readonly path: string;
  readonly bad: object;
  readonly value: unknown;
}

/** The name of a field that nothing has. */
export const STRAY_FIELD = 'gvwrLb';

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const STRAY = Symbol('a field of a name nobody knows');

/** An accepted input with one field made bad at a time, and with a field nobody knows at every level. */
export function spoiled(input: object): readonly Spoiled[] {
  const whole = { path: STRAY_FIELD, bad: { ...input, [STRAY_FIELD]: 1 }, value: 1 };
  const parts = places(input).flatMap(({ path, value, put }) =>
    badValues(value).map((bad) =>
      bad === STRAY ? { path: `${path}.${STRAY_FIELD}`, bad: put(bad), value: 1 } : { path, bad: put(bad), value: bad },
    ),
  );
  return [whole, ...parts];
}

/** The input without one of its own fields at a time. */
export function shortened(input: object): readonly Spoiled[] {
  return Object.keys(input).map((path) => {
    const bad = Object.fromEntries(Object.entries(input).filter(([key]) => key !== path));
    return { path, bad, value: undefined };
  });
}

/** One of the wrong kind and one that cannot be; more of each would be the same reading of the same field. */
function badValues(value: unknown): readonly unknown[] {
  if (typeof value === 'number') return [1e15, 'twelve'];
  if (typeof value === 'boolean') return ['yes'];
  if (typeof value === 'string') {
    if (ID.test(value)) return ['T-07', 7];
    if (DAY.test(value)) return ['2025-02-29', '1025-06-16', 7];
    return ['x'.repeat(5_000), {}];
  }
  if (Array.isArray(value)) return ['some', Array.from({ length: 500 }, () => value[0] ?? 0)];
  if (typeof value === 'object' && value !== null) return [7, STRAY];
  return [];
}

interface Place {
  readonly path: string;
  readonly value: unknown;
  readonly put: (bad: unknown) => object;
}

function places(input: object): readonly Place[] {
  const found: Place[] = [];
  const visit = (value: unknown, path: string, put: (bad: unknown) => object): void => {
    const stray = (bad: unknown) => (bad === STRAY ? { ...(value as object), [STRAY_FIELD]: 1 } : bad);
    if (path !== '') found.push({ path, value, put: (bad) => put(stray(bad)) });
    if (Array.isArray(value)) {
      value.forEach((entry, place) => {
        const at = typeof entry === 'object' ? `${path}[${place}]` : `${path}.${place}`;
        visit(entry, at, (bad) => put(value.map((one, other) => (other === place ? bad : one))));
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

/** Whether a problem of `field` speaks of `path`: of the place itself, of the list or choice around it, or below it. */
export function isAbout(field: string, path: string): boolean {
  return field === path || path.startsWith(`${field}.`) || path.startsWith(`${field}[`) || field.startsWith(path);
}
