import { afterEach } from 'vitest';

/** Names of the tests of this file that failed, so that their database is kept for a look instead of dropped. */
export const failedTests: string[] = [];

afterEach(({ task }) => {
  if (task.result?.state === 'fail') failedTests.push(task.name);
});
