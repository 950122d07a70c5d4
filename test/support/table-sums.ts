import pg from 'pg';

/** Every table with what it holds, as one checksum a table: of all yards, or of one. */
export async function tableSums(databaseUrl: string, yardId: string | null = null): Promise<Record<string, string>> {
  const owner = new pg.Client(databaseUrl);
  await owner.connect();
  try {
    const { rows: tables } = await owner.query<{ name: string }>(
      `select table_name as name from information_schema.columns
       where table_schema = 'public' and column_name = 'yard_id' order by 1`,
    );
    const sums: Record<string, string> = {};
    for (const { name } of tables) sums[name] = await sumOf(owner, name, 'yard_id', yardId);
    sums.yard = await sumOf(owner, 'yard', 'id', yardId);
    return sums;
  } finally {
    await owner.end();
  }
}

async function sumOf(owner: pg.Client, table: string, column: string, yardId: string | null): Promise<string> {
  // When a key was last used is noted without anything being done.
  const { rows } = await owner.query<{ sum: string }>(
    `select count(*) || ' ' || coalesce(md5(string_agg(text, '|' order by text)), '') as sum
     from (select (to_jsonb(one) - 'last_used_at')::text as text from "${table}" one
           where $1::uuid is null or ${column} = $1::uuid) rows`,
    [yardId],
  );
  return rows[0]?.sum ?? '';
}
