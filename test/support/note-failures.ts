import { afterEach } from 'vitest';
import { failedTests } from './failed-tests.js';

// Runs anew before each file, while the list may be the one of the file before: files share their modules.
failedTests.length = 0;

afterEach(({ task }) => {
  if (task.result?.state === 'fail') failedTests.push(task.name);
});
