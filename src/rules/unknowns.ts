import type { DeckLack } from './deck/plank-check.js';
import { machinesOnDeck } from './history/machines-on-deck.js';
import type { TrailerOn } from './history/trailer-on.js';
import type { Due } from './inspection/due.js';
import { deckLaidOn } from './inspection/soft-boards.js';
import type { UseSoFar } from './inspection/use-so-far.js';
import { metres } from './units/length.js';

/** A fact nobody has given, and what it keeps us from working out. Pages word both. */
export interface Unknown {
  readonly lacks: UnknownFact;
  readonly stops: UnknownAnswer;
}

type UnknownFact =
  | DeckLack
  | 'deck-laid'
  | 'build-sheet'
  | 'gvwr'
  | 'empty-mass'
  | 'axles'
  | 'axle-ratings'
  | 'tires'
  | 'tire-ratings'
  | 'tire-date-codes'
  | 'coupler-rating'
  | 'suspension'
  | 'level-height'
  | 'hitch'
  | 'distance'
  | 'trip-distance'
  | 'trip-roads'
  | 'registration-date'
  | 'insurance-date'
  | 'proof-seen';

type UnknownAnswer =
  | 'everything'
  | 'payload'
  | 'axle-check'
  | 'tire-check'
  | 'tire-age'
  | 'coupler-check'
  | 'axle-loads'
  | 'tongue-share'
  | 'due-by-distance'
  | 'harsh-service'
  | 'due-date'
  | 'proof'
  | 'deck-check'
  | 'deck-life';

/** What is unknown about a trailer, in the order in which it is worth finding out. */
export function unknownsOf(trailer: TrailerOn, use: UseSoFar, due: readonly Due[]): readonly Unknown[] {
  return [
    ...unknownsOfBuild(trailer),
    ...unknownsOfDeck(trailer),
    ...unknownsOfUse(trailer, due),
    ...unknownsOfPapers(trailer, use, due),
  ];
}

function unknownsOfBuild({ build, tires, agedTires }: TrailerOn): readonly Unknown[] {
  if (build === null) return [{ lacks: 'build-sheet', stops: 'everything' }];
  const unknowns: Unknown[] = [];
  const miss = (isMissing: boolean, lacks: UnknownFact, stops: UnknownAnswer) => {
    if (isMissing) unknowns.push({ lacks, stops });
  };
  miss(build.plate.gvwrKg === null, 'gvwr', 'payload');
  miss(build.empty.massKg === null, 'empty-mass', 'payload');
  miss(build.axles.length === 0, 'axles', 'axle-check');
  miss(
    build.axles.some((axle) => axle.gawrKg === null && axle.ratingKg === null),
    'axle-ratings',
    'axle-check',
  );
  const wheels = build.axles.reduce((sum, axle) => sum + axle.wheelsPerSide * 2, 0);
  const carrying = tires.filter((tire) => tire.position !== 'spare');
  miss(carrying.length < wheels, 'tires', 'tire-check');
  miss(
    carrying.some(({ tire }) => tire === null || !hasRating(tire)),
    'tire-ratings',
    'tire-check',
  );
  miss(agedTires.filter(({ age }) => age !== null).length < tires.length, 'tire-date-codes', 'tire-age');
  miss(build.hitch.couplerRatingKg === null, 'coupler-rating', 'coupler-check');
  miss(build.suspension === null && build.axles.length > 1, 'suspension', 'axle-loads');
  const torsion = build.suspension === 'torsion' && build.axles.length > 1;
  miss(torsion && build.hitch.levelHeightM === null, 'level-height', 'axle-loads');
  miss(build.hitch.kind === null, 'hitch', 'tongue-share');
  return unknowns;
}

/** What keeps the machines booked, or the one hauled last, from being held against the planks, and a wooden deck from a forecast. */
function unknownsOfDeck(trailer: TrailerOn): readonly Unknown[] {
  const { build, jobs, trips, facts } = trailer;
  if (build === null) return [];
  const hauls = jobs.length > 0 ? jobs : trips.slice(-1);
  const lacks = new Set<DeckLack>();
  for (const haul of hauls) {
    for (const { check } of machinesOnDeck(haul, build, facts.machines, metres(0))) {
      for (const lack of check.lacks) lacks.add(lack);
    }
  }
  const unknowns: Unknown[] = [...lacks].sort().map((lack) => ({ lacks: lack, stops: 'deck-check' }));
  const isWood = build.deck.material !== null && build.deck.material !== 'tread-plate';
  if (isWood && deckLaidOn(trailer) === null) unknowns.push({ lacks: 'deck-laid', stops: 'deck-life' });
  return unknowns;
}

function hasRating(tire: NonNullable<TrailerOn['tires'][number]['tire']>): boolean {
  return [tire.maxLoadSingleKg, tire.maxLoadDualKg, tire.loadIndexSingle, tire.loadIndexDual, tire.loadRange].some(
    (mark) => mark !== null,
  );
}

function unknownsOfUse({ trips }: TrailerOn, due: readonly Due[]): readonly Unknown[] {
  const unknowns: Unknown[] = [];
  if (due.some((item) => item.unknown === 'no-distance-known')) {
    unknowns.push({ lacks: 'distance', stops: 'due-by-distance' });
  } else if (trips.some((trip) => trip.distanceKm === null)) {
    unknowns.push({ lacks: 'trip-distance', stops: 'due-by-distance' });
  }
  if (trips.some((trip) => trip.roads === null)) unknowns.push({ lacks: 'trip-roads', stops: 'harsh-service' });
  return unknowns;
}

function unknownsOfPapers(trailer: TrailerOn, use: UseSoFar, due: readonly Due[]): readonly Unknown[] {
  const { registrationExpiresOn, insuranceExpiresOn } = trailer.facts.trailer;
  const unknowns: Unknown[] = [];
  if (registrationExpiresOn === null) unknowns.push({ lacks: 'registration-date', stops: 'due-date' });
  if (insuranceExpiresOn === null) unknowns.push({ lacks: 'insurance-date', stops: 'due-date' });
  const asked = new Set(due.map((item) => item.checkKindId));
  const unseen = trailer.facts.checkKinds.some(
    (kind) => kind.proof !== null && asked.has(kind.id) && use.lastPass.get(kind.id)?.proofOnTrailer === null,
  );
  if (unseen) unknowns.push({ lacks: 'proof-seen', stops: 'proof' });
  return unknowns;
}
