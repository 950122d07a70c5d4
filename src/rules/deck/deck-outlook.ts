import type { CivilDate } from '../calendar/civil-date.js';
import { daysAfter, MEAN_YEAR_DAYS, yearsBetween } from '../calendar/day-number.js';
import type { DeckLife } from '../facts/deck-life.js';
import type { YardPolicy } from '../facts/yard-policy.js';
import type { Lifetime } from '../statistics/lifetime.js';
import { fitWeibull } from '../statistics/weibull-fit.js';
import { type DeckLifePrior, type DeckNature, deckLifePrior } from './deck-life-prior.js';
import {
  ageOfShare,
  aliveAt,
  type LifeMixture,
  learnt,
  SHAPE_PRIOR,
  type ToldByLives,
  toldBy,
} from './life-mixture.js';
import { type PastDecks, pastDecks } from './past-decks.js';

/**
 * How long a deck may still last, from the owner's estimate and the yard's decks. Holds on any day from `countedTo` until
 * it is worked out again: the day of reading goes into `deckDates` and `chanceOfNewDeck`.
 */
export interface DeckOutlook {
  readonly laidOn: CivilDate;
  /** Decks still in use are counted as having lasted until this day. */
  readonly countedTo: CivilDate;
  readonly prior: DeckLifePrior;
  /** Decks of the yard that went into it, this one among them: worn out, and lasting or taken off for another reason. */
  readonly wornOut: number;
  readonly survivors: number;
  readonly mixture: LifeMixture;
  /** Decks like this one that wore out, as they are. Leaves out `stillInUse`. */
  readonly past: (PastDecks & { readonly stillInUse: number }) | null;
  /** A Weibull law for decks like this one alone, survivors included; null while none has worn out. */
  readonly yardFit: YardFit | null;
}

interface YardFit {
  readonly shape: number;
  readonly scaleYears: number;
  readonly wornOut: number;
  readonly decks: number;
}

export interface DeckDates {
  /** Alive on this day is what everything here is given. */
  readonly on: CivilDate;
  readonly tenPercentOn: CivilDate;
  readonly halfOn: CivilDate;
  readonly ninetyPercentOn: CivilDate;
}

/** `asOf`: what is known by then counts. `countedTo`: decks in use are counted as having lasted until then; not after `asOf`. */
export interface OutlookDays {
  readonly asOf: CivilDate;
  readonly countedTo: CivilDate;
}

export interface OwnDeck extends DeckNature {
  readonly partId: string;
  readonly laidOn: CivilDate;
}

/**
 * Null for a steel deck. `decks`: all of the yard's decks known on `asOf`; those that end after `countedTo` and are
 * known to have worn out by `asOf` count as worn out, the rest as alive on `countedTo`.
 */
export function deckOutlook(
  own: OwnDeck,
  decks: readonly DeckLife[],
  policy: Pick<YardPolicy, 'decayIndex' | 'deckLifeYears'>,
  on: OutlookDays,
): DeckOutlook | null {
  const prior = deckLifePrior(own, policy);
  if (prior === null) return null;
  const told = toldByYard(own, decks, policy, on);
  const age = yearsBetween(own.laidOn, on.countedTo) / prior.medianYears;
  const isAmong = told.partIds.has(own.partId);
  const lives = isAmong ? told.lives : plus(told.lives, toldBy([{ age, died: false }]));
  return {
    laidOn: own.laidOn,
    countedTo: on.countedTo,
    prior,
    wornOut: told.lives.deaths,
    survivors: told.partIds.size - told.lives.deaths + (isAmong ? 0 : 1),
    mixture: learnt(lives),
    past: told.past,
    yardFit: told.yardFit,
  };
}

/** Dates by which this deck will be worn out with 10, 50 and 90 %, given that it lies on `on` (not before `countedTo`). */
export function deckDates(outlook: DeckOutlook, on: CivilDate): DeckDates {
  const by = (share: number): CivilDate => {
    const age = ageOfShare(outlook.mixture, ageOf(outlook, outlook.countedTo), ageOf(outlook, on), share);
    return afterYears(outlook.laidOn, age * outlook.prior.medianYears);
  };
  return { on, tenPercentOn: by(0.1), halfOn: by(0.5), ninetyPercentOn: by(0.9) };
}

/** Probability that a deck lying on `on` is worn out by `by`. 0 where `by` comes first. */
export function chanceOfNewDeck(outlook: DeckOutlook, on: CivilDate, by: CivilDate): number {
  const from = ageOf(outlook, outlook.countedTo);
  const now = aliveAt(outlook.mixture, from, ageOf(outlook, on));
  return by <= on ? 0 : 1 - aliveAt(outlook.mixture, from, ageOf(outlook, by)) / now;
}

/** The day a number of years after another, to the day. */
export function afterYears(from: CivilDate, years: number): CivilDate {
  return daysAfter(from, Math.round(years * MEAN_YEAR_DAYS));
}

/**
 * The days to come on which one of these decks is laid or ends. Looked up once for each list: a yard may have thousands,
 * and as a rule none of them lies ahead.
 */
export function decksEndingAfter(decks: readonly DeckLife[], asOf: CivilDate): readonly CivilDate[] {
  const last = LAST_DAY.get(decks) ?? decks.flatMap(daysOf).sort().at(-1) ?? asOf;
  LAST_DAY.set(decks, last);
  return last <= asOf ? [] : decks.flatMap(daysOf).filter((day) => day > asOf);
}

const LAST_DAY = new WeakMap<readonly DeckLife[], CivilDate>();

function daysOf({ laidOn, endedOn }: DeckLife): readonly CivilDate[] {
  return endedOn === null ? [laidOn] : [laidOn, endedOn];
}

/** As a share of the life expected beforehand. */
function ageOf({ laidOn, prior }: DeckOutlook, on: CivilDate): number {
  return yearsBetween(laidOn, on) / prior.medianYears;
}

interface ToldByYard {
  readonly partIds: ReadonlySet<string>;
  readonly lives: ToldByLives;
  readonly past: DeckOutlook['past'];
  readonly yardFit: YardFit | null;
}

/**
 * What was learnt from one list of decks. Trailers of like decks are handed the same list, and a yard may have thousands
 * of both, so it is worked out once for each list and kept while the list is; the answer never depends on it.
 */
const KEPT = new WeakMap<readonly DeckLife[], Map<string, ToldByYard>>();

function toldByYard(
  own: OwnDeck,
  decks: readonly DeckLife[],
  policy: Pick<YardPolicy, 'decayIndex' | 'deckLifeYears'>,
  { asOf, countedTo }: OutlookDays,
): ToldByYard {
  const key = [
    asOf,
    countedTo,
    own.material,
    own.wood,
    own.treated,
    own.stored,
    policy.decayIndex,
    policy.deckLifeYears,
  ].join();
  const kept = KEPT.get(decks) ?? new Map<string, ToldByYard>();
  KEPT.set(decks, kept);
  const known = kept.get(key);
  if (known !== undefined) return known;
  const told = learnFrom(own, decks, policy, asOf, countedTo);
  kept.set(key, told);
  return told;
}

function learnFrom(
  own: OwnDeck,
  decks: readonly DeckLife[],
  policy: Pick<YardPolicy, 'decayIndex' | 'deckLifeYears'>,
  asOf: CivilDate,
  countedTo: CivilDate,
): ToldByYard {
  const partIds = new Set<string>();
  const scaled: Lifetime[] = [];
  const alike: Lifetime[] = [];
  let stillInUse = 0;
  // Sums depend on their order in the last digit: one order, whatever list was handed over.
  for (const deck of decks.toSorted((a, b) => (a.partId < b.partId ? -1 : 1))) {
    const prior = deckLifePrior(deck, policy);
    if (prior === null || deck.laidOn > countedTo) continue;
    const hasEnded = deck.endedOn !== null && deck.endedOn <= asOf;
    const died = hasEnded && deck.wornOut;
    // A deck with no length of life on record (worn out on the day it was laid) is a slip of the pen.
    const last =
      hasEnded && (died || (deck.endedOn as CivilDate) < countedTo) ? (deck.endedOn as CivilDate) : countedTo;
    const age = yearsBetween(deck.laidOn, last);
    if (!(age > 0) && died) continue;
    partIds.add(deck.partId);
    scaled.push({ age: age / prior.medianYears, died });
    if (!isAlike(deck, own)) continue;
    alike.push({ age, died });
    if (!hasEnded) stillInUse++;
  }
  const past = pastDecks(alike.flatMap(({ age, died }) => (died ? [age] : [])));
  return {
    partIds,
    lives: toldBy(scaled),
    past: past === null ? null : { ...past, stillInUse },
    yardFit: yardFitOf(alike),
  };
}

/** Of the same wood, treatment and shelter as far as both are known. */
function isAlike(a: DeckNature, b: DeckNature): boolean {
  return (['material', 'wood', 'treated', 'stored'] as const).every(
    (key) => a[key] === null || b[key] === null || a[key] === b[key],
  );
}

function yardFitOf(alike: readonly Lifetime[]): YardFit | null {
  const fit = fitWeibull(alike, SHAPE_PRIOR);
  if (fit.kind === 'refused') return null;
  return { shape: fit.shape, scaleYears: fit.scale, wornOut: fit.deaths, decks: alike.length };
}

function plus(a: ToldByLives, b: ToldByLives): ToldByLives {
  return {
    deaths: a.deaths + b.deaths,
    sumLogDeathAge: a.sumLogDeathAge + b.sumLogDeathAge,
    exposures: a.exposures.map((sum, i) => sum + (b.exposures[i] as number)),
  };
}
