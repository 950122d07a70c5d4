/** Longer than any request or mail in hand should take; after it the process ends all the same. */
const FUSE_MS = 15_000;

/**
 * Runs `stop` once, on Ctrl-C or on a TERM signal, and then ends the process: with 0 after an orderly stop, with 1 if
 * stopping failed or took too long. Nest's own shutdown hooks would end the process before Postgres is stopped.
 */
export const stopOnSignal = (stop: () => Promise<void>): void => {
  let stopping = false;
  const onSignal = (): void => {
    if (stopping) return;
    stopping = true;
    setTimeout(() => process.exit(1), FUSE_MS).unref();
    stop().then(
      () => process.exit(0),
      (error: unknown) => {
        console.error(error);
        process.exit(1);
      },
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, onSignal);
};
