import type { CivilDate } from '../calendar/civil-date.js';
import type { TrailerFacts } from '../facts/trailer-facts.js';
import { hubLives } from '../history/hub-lives.js';
import { trailerOn } from '../history/trailer-on.js';
import { dueChecksOn } from '../inspection/due.js';
import { useSoFar } from '../inspection/use-so-far.js';
import { wearTrends } from '../inspection/wear-trends.js';
import { explainDeckLife } from './explain-deck.js';
import { explainDue } from './explain-due.js';
import { explainHubLife } from './explain-hub.js';
import { explainPayload } from './explain-ratings.js';
import { explainWear } from './explain-wear.js';
import type { Working } from './working.js';

/**
 * How what `assess` says of a trailer on a day was worked out. Kept apart from it: asked for by a person who reads one
 * trailer, never for a fleet, and not kept.
 */
export function explain(facts: TrailerFacts, asOf: CivilDate): readonly Working[] {
  const trailer = trailerOn(facts, asOf);
  const use = useSoFar(trailer);
  return [
    trailer.build === null ? null : explainPayload(trailer.build, trailer.tires),
    explainDeckLife(trailer),
    ...dueChecksOn(trailer, use).map((due) => explainDue(due, use)),
    ...wearTrends(trailer, use).map((trend) => explainWear(trend, use)),
    ...hubLives(trailer, use.travelled).map(explainHubLife),
  ].filter((one) => one !== null);
}
