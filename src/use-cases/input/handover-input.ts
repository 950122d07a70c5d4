import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { BuildSheet } from '../../rules/facts/build-sheet.js';
import {
  type Ball,
  type CustomerHitch,
  PLUG_TRIALS,
  SEEN_CONDITIONS,
  SEEN_THINGS,
  type Seen,
  type Signature,
  type Stroke,
} from '../../rules/facts/handover.js';
import type { Part } from '../../rules/facts/part.js';
import { PLAUSIBLE_BUILD, type Plausible } from '../../rules/facts/plausible.js';
import { type Given, TEXT } from './given.js';
import type { Incoming } from './incoming.js';
import { readTireMarks, readTirePosition } from './part-input.js';
import { type Photo, readPhoto } from './photo-input.js';

/** A thing as it was seen, before its photos are kept. */
export type SeenNow = Omit<Seen, 'photoIds'>;

/** What both ways have in common. */
export interface HandoverInput {
  readonly trailerId: string;
  readonly on: CivilDate;
  readonly seen: readonly Incoming<Omit<SeenNow, 'ballSizeM'>>[];
  /** Each of a thing in the list. */
  readonly photos?: readonly (Photo & { readonly thing: Seen['thing']; readonly position?: string | null })[] | null;
  readonly signature?: Incoming<Signature> | null;
}

/** A trailer with three axles of dual tires, every thing of which was looked at, still fits. */
const MOST_SEEN = 60;
const MOST_PHOTOS = 24;
const MOST_STROKES = 60;
/** Two hundred points of a stroke: a long name written without lifting the finger. */
const MOST_NUMBERS = 400;

/** A place on the pad; a pad is at most twice as high as it is wide. */
const ON_PAD: Plausible = { what: 'a point of the stroke', low: 0, high: 2_000, unit: null, whole: true };

/** The customer's ball is asked about by itself: whether it was changed, and whether it is back. */
const LISTED_THINGS = SEEN_THINGS.filter((thing) => thing !== 'customer-ball');

/** What was looked at. `build` names the wheels there are; null while nobody has said how many axles it has. */
export function readSeen(given: Given, build: BuildSheet | null, today: CivilDate): readonly SeenNow[] {
  const seen = given.list('seen', 'things looked at', MOST_SEEN).map((one) => readOne(one, build, today));
  if (seen.length === 0 && !given.has('seen')) {
    given.refuse(
      'seen',
      'Look it over and say how each thing is: what nobody saw going out can be held against nobody.',
    );
  }
  const there = new Set<string>();
  seen.forEach(({ thing, position }, place) => {
    const which = placeOf(thing, position);
    if (there.has(which)) given.refuse(`seen[${place}].thing`, 'This thing and position are there twice; keep one.');
    there.add(which);
  });
  return seen;
}

function readOne(one: Given, build: BuildSheet | null, today: CivilDate): SeenNow {
  const thing = one.needChoice('thing', 'what was looked at', LISTED_THINGS as [Seen['thing'], ...Seen['thing'][]]);
  const hasMarks = thing === 'tire' || thing === 'spare';
  if (!hasMarks && one.has('tire')) one.refuse('tire', 'Only a tire has marks of a tire; leave them out.');
  const marks = one.object('tire');
  if (!hasMarks) marks.ignore();
  return {
    thing,
    position: readSeenPosition(one, thing, build),
    condition: one.needChoice('condition', 'how it was found', SEEN_CONDITIONS as never) as Seen['condition'],
    tire: hasMarks && one.has('tire') ? readTireMarks(marks, today) : null,
    ballSizeM: null,
    note: one.text('note', 'the note', TEXT.line),
  };
}

function readSeenPosition(one: Given, thing: Seen['thing'], build: BuildSheet | null): string | null {
  const text = one.text('position', 'the position', TEXT.mark);
  if (thing !== 'tire') return text?.toLowerCase() ?? null;
  const position = readTirePosition(one, text?.toUpperCase() ?? null, build);
  if (position === 'SPARE') one.refuse('position', 'Give the spare as a thing of its own, named spare.');
  return position;
}

/** A tire of which nothing was read is taken for the one on file: that is what the sheet shows beside it. */
export function withMarksOnFile(seen: readonly SeenNow[], parts: readonly Part[]): readonly SeenNow[] {
  return seen.map((one) => {
    const place = one.thing === 'tire' ? one.position : one.thing === 'spare' ? 'spare' : null;
    if (place === null || one.tire !== null || one.condition === 'missing') return one;
    const onFile = parts.find((part) => part.kind === 'tire' && part.position === place && part.removedOn === null);
    return { ...one, tire: onFile?.tire ?? null };
  });
}

/** Photos with the place, in the list, of what each shows. */
export function readPhotosOf(given: Given, seen: readonly SeenNow[]): readonly (Photo & { readonly place: number })[] {
  return given.list('photos', 'photos', MOST_PHOTOS).map((one) => {
    const thing = one.needChoice('thing', 'what it shows', LISTED_THINGS as [Seen['thing'], ...Seen['thing'][]]);
    const position = one.text('position', 'where that is', TEXT.mark);
    const place = seen.findIndex((other) => placeOf(other.thing, other.position) === placeOf(thing, position));
    if (place < 0) one.refuse('thing', 'Choose something in the list of what was seen; a picture of nothing is lost.');
    return { ...readPhoto(one), place };
  });
}

export function readHitch(given: Given, build: BuildSheet | null): CustomerHitch {
  const hitch = given.object('hitch');
  const ball = readBall(hitch.object('ball'), build?.hitch.kind !== 'pintle');
  const swapped = hitch.has('swappedTo') ? readBall(hitch.object('swappedTo'), true) : null;
  return { ball, swappedTo: swapped, plug: hitch.choice('plug', 'what plugging in worked', PLUG_TRIALS) };
}

/** A size must be read, stamped or measured, before anybody couples up; a rating may be worn off. */
function readBall(ball: Given, isNeeded: boolean): Ball {
  const size = PLAUSIBLE_BUILD.ballSize;
  return {
    sizeM: isNeeded ? ball.needNumber('sizeM', size) : ball.number('sizeM', size),
    ratingKg: ball.number('ratingKg', PLAUSIBLE_BUILD.ballRating),
  };
}

export function readSignature(given: Given): Signature | null {
  if (!given.has('signature')) return null;
  const signature = given.object('signature');
  const name = signature.text('name', 'the name of whoever signs', TEXT.name);
  const strokes = signature.list('strokes', 'strokes', MOST_STROKES).map(readStroke);
  if (name === null && strokes.length === 0 && !signature.has('name') && !signature.has('strokes')) {
    signature.refuse('name', 'Have the customer draw or type the signature, or leave it out whole.');
  }
  return { name, strokes };
}

function readStroke(stroke: Given): Stroke {
  const points = stroke.numbers('points', ON_PAD, MOST_NUMBERS) ?? [];
  const isWhole = points.length >= 2 && points.length % 2 === 0;
  if (!isWhole) stroke.refuse('points', 'Give the points of a stroke as x, y, x, y: two numbers each, one at least.');
  return { points };
}

function placeOf(thing: Seen['thing'], position: string | null): string {
  return `${thing}@${position?.toLowerCase() ?? ''}`;
}
