/** Names of the tests of this file that failed, so that their database is kept for a look instead of dropped. */
export const failedTests: string[] = [];
