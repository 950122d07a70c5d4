import { Injectable } from '@nestjs/common';
import type { CivilDate } from '../rules/calendar/civil-date.js';
import type { DeckLife } from '../rules/facts/deck-life.js';
import type { YardTx } from './database.js';
import { deckLives } from './deck-lives.js';
import { holdResults } from './hold-results.js';

/** Of some trailers what their decks tell of the life of decks, and of which materials it is not what they told before. */
interface DeckNews {
  readonly lives: ReadonlyMap<string, readonly DeckLife[]>;
  readonly materials: readonly string[];
}

/**
 * A deck that ended, or a new one, changes what is expected of every deck of its material in the yard. What each trailer's
 * decks told is kept beside its results; only when that changes are the others woken, so that an ordinary day costs nothing.
 */
@Injectable()
export class DeckLifeStore {
  /**
   * To be asked before the facts of these trailers are read, and after they were locked. With news the transaction stands
   * alone, or another would keep a result made from the decks of before.
   *
   * With `firstCounts` a trailer without results has everything to tell; without it, nothing: its results were thrown
   * away and are being rebuilt.
   */
  async news(tx: YardTx, trailerIds: readonly string[], firstCounts: boolean): Promise<DeckNews> {
    const now = await deckLives(tx, trailerIds);
    const rows = await tx.trailerResult.findMany({
      where: { yardId: tx.yardId, trailerId: { in: [...trailerIds] } },
      select: { trailerId: true, deckLives: true },
    });
    const told = new Map(rows.map((row) => [row.trailerId, row.deckLives as unknown as readonly DeckLife[]]));
    const lives = new Map(trailerIds.map((id) => [id, now.filter((life) => life.trailerId === id)]));
    const materials = new Set<string>();
    for (const [trailerId, own] of lives) {
      const before = told.get(trailerId) ?? (firstCounts ? [] : own);
      for (const material of changedMaterials(before, own)) materials.add(material);
    }
    await holdResults(tx, materials.size > 0 ? 'alone' : 'side-by-side');
    return { lives, materials: [...materials].sort() };
  }

  /** Keeps what these trailers have told, once their results stand, and wakes those that it concerns on `date`. */
  async tell(tx: YardTx, { lives, materials }: DeckNews, date: CivilDate): Promise<void> {
    const rows = [...lives].map(([trailer_id, own]) => ({ trailer_id, own }));
    await tx.$executeRaw`
      update trailer_result set deck_lives = told.own
      from jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) as told (trailer_id uuid, own jsonb)
      where trailer_result.yard_id = ${tx.yardId}::uuid and trailer_result.trailer_id = told.trailer_id
        and trailer_result.deck_lives <> told.own`;
    if (materials.length === 0) return;
    await tx.$executeRaw`
      update trailer_result set wake_on = ${date}::date, as_of = least(as_of, ${date}::date - 1)
      where yard_id = ${tx.yardId}::uuid and trailer_id <> all(${[...lives.keys()]}::uuid[])
        and trailer_id in (
          select build_sheet.trailer_id from build_sheet
          where build_sheet.yard_id = ${tx.yardId}::uuid and build_sheet.deck_material = any(${[...materials]}::text[]))`;
  }
}

/** Of what a deck of unknown material tells, nobody else can learn. */
function changedMaterials(before: readonly DeckLife[], now: readonly DeckLife[]): readonly string[] {
  const gone = before.filter((life) => !now.some((other) => same(life, other)));
  const come = now.filter((life) => !before.some((other) => same(life, other)));
  return [...gone, ...come].flatMap((life) => life.material ?? []);
}

function same(a: DeckLife, b: DeckLife): boolean {
  return (Object.keys(a) as (keyof DeckLife)[]).every((key) => a[key] === b[key]);
}
