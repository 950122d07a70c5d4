import reference from '../reference/law-cases.json' with { type: 'json' };

/** A published case of a rule: numbers in the rule's own units, as its input names say. */
export interface LawCase {
  readonly id: string;
  readonly rule: string;
  // biome-ignore lint/suspicious/noExplicitAny: each rule has its own fields; the tests that read them say which.
  readonly input: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above.
  readonly expected: any;
}

/** The cases whose id begins so, each with its id for the test's name. At least one, or the name is wrong. */
export function lawCases(prefix: string): readonly (readonly [string, LawCase])[] {
  const found = (reference.cases as readonly LawCase[]).filter((one) => one.id.startsWith(prefix));
  if (found.length === 0) throw new Error(`no published case begins with ${prefix}`);
  return found.map((one) => [one.id, one]);
}
