import { expect, test } from 'vitest';
import { DEFAULT_CHECK_KINDS } from '../../../src/rules/inspection/default-check-kinds.js';
import { readCheckKind } from '../../../src/use-cases/input/check-kind-input.js';
import { Given } from '../../../src/use-cases/input/given.js';

test('every check a yard starts with can be saved again as it stands', () => {
  for (const kind of DEFAULT_CHECK_KINDS) {
    const given = Given.from(kind);
    const read = readCheckKind(given);
    expect(given.problems, kind.code).toEqual([]);
    expect(read, kind.code).toEqual(kind);
  }
});
