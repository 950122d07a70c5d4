import type { DeckLife } from '../rules/facts/deck-life.js';
import type { TrailerFacts } from '../rules/facts/trailer-facts.js';
import type { YardTx } from './database.js';
import { standing } from './fact-table.js';
import { Prisma } from './generated/client.js';
import { jsonRows } from './json-rows.js';

const DECK_LIFE = Prisma.sql`json_build_object(
  'partId', deck.id,
  'trailerId', deck.trailer_id,
  'laidOn', deck.fitted_on,
  'endedOn', coalesce(deck.removed_on, deck.last_known_on),
  'wornOut', coalesce(deck.removed_for in ('worn-out', 'damaged'), false),
  'material', deck.deck_material,
  'wood', deck.deck_wood,
  'treated', deck.deck_treated,
  'stored', deck.stored)`;

/** After a trailer was sold or scrapped nobody knows how its deck fared; until its last trip, reading or check somebody did. */
const LAST_KNOWN = Prisma.sql`
  select greatest(part.fitted_on,
    (select max(trip.ended_on) from trip
      where trip.yard_id = part.yard_id and trip.trailer_id = part.trailer_id and ${standing('trip')}),
    (select max(meter_reading.taken_on) from meter_reading
      where meter_reading.yard_id = part.yard_id and meter_reading.trailer_id = part.trailer_id
        and ${standing('meter_reading')}),
    (select max(check_record.done_on) from check_record
      where check_record.yard_id = part.yard_id and check_record.trailer_id = part.trailer_id
        and ${standing('check_record')}))`;

/**
 * The decks of these trailers, or of the whole yard, as far as their day of laying is known; the oldest first. Each is
 * told with the build of the day on which it was laid, as `buildOn` of the rules finds it. All builds are joined and one
 * is picked, since looking it up for each deck takes Postgres ten times as long.
 */
export async function deckLives(tx: YardTx, trailerIds?: readonly string[]): Promise<readonly DeckLife[]> {
  const among = trailerIds ? Prisma.sql`and part.trailer_id = any(${[...trailerIds]}::uuid[])` : Prisma.empty;
  // One value rather than a row for each deck.
  const [lives] = await jsonRows<readonly DeckLife[]>(
    tx,
    Prisma.sql`coalesce(json_agg(${DECK_LIFE} order by deck.fitted_on, deck.id), '[]')`,
    Prisma.sql`from (
      select distinct on (part.fitted_on, part.id) part.id, part.trailer_id, part.fitted_on, part.removed_on,
        part.removed_for, trailer.stored, build_sheet.deck_material, build_sheet.deck_wood, build_sheet.deck_treated,
        case when trailer.status <> 'in-service' and part.removed_on is null then (${LAST_KNOWN}) end as last_known_on
      from part
      join trailer on trailer.yard_id = part.yard_id and trailer.id = part.trailer_id
      left join build_sheet on build_sheet.yard_id = part.yard_id and build_sheet.trailer_id = part.trailer_id
        and ${standing('build_sheet')}
      where part.yard_id = ${tx.yardId}::uuid ${among} and part.kind = 'deck' and part.fitted_on is not null
        and ${standing('part')}
      order by part.fitted_on, part.id, build_sheet.effective_from <= part.fitted_on desc,
        case when build_sheet.effective_from <= part.fitted_on then build_sheet.effective_from end desc,
        build_sheet.effective_from,
        case when build_sheet.effective_from <= part.fitted_on then build_sheet.id end desc,
        build_sheet.id) deck`,
  );
  return lives ?? [];
}

/**
 * The decks of a yard, sorted out for its trailers: each learns of the decks of the materials it has had, and of its own.
 * Trailers of like decks are handed one and the same list, so that what is learnt from it need be worked out only once.
 */
export class DecksOfYard {
  private readonly lists = new Map<string, readonly DeckLife[]>();

  constructor(private readonly lives: readonly DeckLife[]) {}

  forTrailer({ trailer, builds }: Pick<TrailerFacts, 'trailer' | 'builds'>): readonly DeckLife[] {
    const materials = new Set(builds.map((build) => build.deck.material).filter((material) => material !== null));
    const own = this.lives.some((life) => life.trailerId === trailer.id && life.material === null) ? trailer.id : '';
    const key = [...[...materials].sort(), own].join(' ');
    const known = this.lists.get(key);
    if (known !== undefined) return known;
    const list = this.lives.filter(
      (life) => life.trailerId === own || (life.material !== null && materials.has(life.material)),
    );
    this.lists.set(key, list);
    return list;
  }
}
