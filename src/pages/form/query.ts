type Query = Readonly<Record<string, unknown>>;

/** What an address says after its question mark, read with suspicion: anyone can type one. */
export function queryText(query: unknown, name: string, longest = 60): string | null {
  const value = isQuery(query) ? query[name] : undefined;
  const text = typeof value === 'string' ? value.trim().slice(0, longest) : '';
  return text === '' ? null : text;
}

export function queryChoice<Value extends string>(
  query: unknown,
  name: string,
  choices: readonly Value[],
): Value | null {
  const text = queryText(query, name);
  return choices.find((choice) => choice === text) ?? null;
}

const ID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/** The id of something; whatever is none is left out. */
export function queryId(query: unknown, name: string): string | null {
  const text = queryText(query, name);
  return text !== null && ID.test(text) ? text : null;
}

/** From 1; whatever is no page is the first. */
export function queryPage(query: unknown): number {
  const page = Number(queryText(query, 'page') ?? 1);
  return Number.isInteger(page) && page >= 1 && page <= 100_000 ? page : 1;
}

function isQuery(query: unknown): query is Query {
  return typeof query === 'object' && query !== null;
}
