import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['test/**/*.test.{ts,tsx}'],
    globalSetup: 'test/support/global-setup.ts',
    setupFiles: 'test/support/note-failures.ts',
    // By itself it would leave one of two cores idle; the database server and the browser share them anyhow.
    maxWorkers: 2,
    // A committed `.only` would silently skip everything beside it.
    allowOnly: false,
    // Nothing asserts a time; these only end what hangs, on slow machines too.
    testTimeout: 60_000,
    hookTimeout: 120_000,
    execArgv: ['--disable-warning=ExperimentalWarning'],
    coverage: { include: ['src/**'], exclude: ['src/store/generated/**'], reportsDirectory: 'coverage' },
  },
});
