import 'reflect-metadata';
import { parseArgs } from 'node:util';
import { Module } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { type Config, readConfig } from './config.js';
import { configModule } from './config.module.js';
import { Clock } from './http/clock.js';
import { startPostgres } from './launch/postgres.js';
import { type CivilDate, parseCivilDate } from './rules/calendar/civil-date.js';
import { type ListedYard, ListYards } from './use-cases/notices/list-yards.js';
import { PreviewYardDay } from './use-cases/notices/preview-yard-day.js';
import { UseCasesModule } from './use-cases/use-cases.module.js';

// `npm run plan -- [--yard <short name>] [--date <YYYY-MM-DD>]`: prints the letters that a day would bring, as they
// stand now, and writes and sends nothing. May run beside the service.

@Module({})
class PlanModule {}

/** Something the person at the terminal can mend. */
class PlanError extends Error {}

async function printPlan(config: Config): Promise<void> {
  const { values } = parseArgs({ options: { yard: { type: 'string' }, date: { type: 'string' } } });
  const clock = new Clock();
  const app = await NestFactory.createApplicationContext(
    { module: PlanModule, imports: [configModule(config, clock), UseCasesModule] },
    { logger: ['error'], abortOnError: false },
  );
  try {
    const yard = chosen(await app.get(ListYards).run(), values.yard);
    const today = values.date === undefined ? clock.today(yard.timeZone) : readDate(values.date);
    const letters = await app.get(PreviewYardDay).run({
      ...{ yardId: yard.yardId, timeZone: yard.timeZone, today, now: clock.now() },
      ...{ personId: null, name: 'Axlebook', role: 'owner', door: 'job' },
    });
    if (!letters.ok) throw new Error(JSON.stringify(letters.problem));
    console.log(`${yard.name}, ${today}: ${letters.value.length} letter(s). Nothing is written or sent.`);
    for (const { to, subject, text } of letters.value) {
      console.log(`\n${'─'.repeat(72)}\nTo: ${to.name} <${to.address}>\nSubject: ${subject}\n\n${text}`);
    }
  } finally {
    await app.close();
  }
}

function chosen(yards: readonly ListedYard[], slug: string | undefined): ListedYard {
  const [found, ...more] = slug === undefined ? yards : yards.filter((yard) => yard.slug === slug);
  if (found !== undefined && more.length === 0) return found;
  const known = yards.map((yard) => `  --yard ${yard.slug}   (${yard.name})`).join('\n');
  throw new PlanError(known === '' ? 'There is no yard yet.' : `Say which yard:\n${known}`);
}

function readDate(text: string): CivilDate {
  const date = parseCivilDate(text);
  if (date === null) throw new PlanError(`"${text}" is no day of the calendar. Write it as 2026-06-02.`);
  return date;
}

try {
  const config = readConfig(process.env);
  const own = config.databaseUrl === null ? await startPostgres(config.dataDir) : null;
  try {
    await printPlan(config.with({ databaseUrl: config.databaseUrl ?? own?.url ?? null }));
  } finally {
    await own?.stop();
  }
} catch (error) {
  console.error(error instanceof PlanError ? error.message : error);
  process.exitCode = 1;
}
