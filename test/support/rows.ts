import pg from 'pg';

/** Rows as the database itself has them, whatever the service would say of them. */
export async function rowsOf(
  databaseUrl: string,
  sql: string,
  values: readonly unknown[] = [],
): Promise<readonly Record<string, unknown>[]> {
  const client = new pg.Client(databaseUrl);
  await client.connect();
  try {
    return (await client.query(sql, [...values])).rows;
  } finally {
    await client.end();
  }
}
