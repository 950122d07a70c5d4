import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** What starts services, browsers or copies of itself, or wants the first logger of a process: each in its own. */
const ALONE = ['test/browser/**', 'test/launch/**', 'test/jobs/**', 'test/migrations/**', 'test/http/log.test.ts'];
const FILES = 'test/**/*.test.{ts,tsx}';

const common = {
  globalSetup: 'test/support/global-setup.ts',
  setupFiles: 'test/support/note-failures.ts',
  // Nothing asserts a time; these only end what hangs, on slow machines too.
  testTimeout: 240_000,
  hookTimeout: 300_000,
  execArgv: ['--disable-warning=ExperimentalWarning'],
};

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    // By itself it would leave one of two cores idle; the database server and the browser share them anyhow.
    maxWorkers: 2,
    // A committed `.only` would silently skip everything beside it.
    allowOnly: false,
    coverage: { include: ['src/**'], exclude: ['src/store/generated/**'], reportsDirectory: 'coverage' },
    projects: [
      // Loading the service costs more than most files' tests, so files share it.
      { extends: true, test: { name: 'shared', include: [FILES], exclude: ALONE, isolate: false, ...common } },
      {
        extends: true,
        test: { name: 'alone', include: ALONE.map((at) => at.replace(/\*\*$/, '**/*.test.ts')), ...common },
      },
    ],
  },
});
