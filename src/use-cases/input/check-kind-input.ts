import { BODIES, BRAKES, DECK_MATERIALS, HITCHES, RAMPS, SUSPENSIONS } from '../../rules/facts/build-sheet.js';
import {
  type AppliesTo,
  CHECK_EVENTS,
  type CheckKind,
  MEASURED_QUANTITIES,
  type SheetLine,
  type Trigger,
} from '../../rules/facts/check.js';
import { PLAUSIBLE_SETTING } from '../../rules/facts/plausible.js';
import { type Given, TEXT } from './given.js';
import type { Incoming } from './incoming.js';

export type CheckKindInput = Incoming<Omit<CheckKind, 'id'>>;

const CODE = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
const R = PLAUSIBLE_SETTING;

/** A kind of check as the yard wants it, whole: what is not given is not kept from before. */
export function readCheckKind(given: Given): Omit<CheckKind, 'id'> {
  const ownerPersonId = given.id('ownerPersonId', 'who does it');
  const backupPersonId = given.id('backupPersonId', 'who stands in');
  if (ownerPersonId !== null && ownerPersonId === backupPersonId) {
    given.refuse('backupPersonId', 'Choose somebody else to stand in, or nobody.');
  }
  const proof = given.object('proof');
  const lines = given.list('lines', 'lines', 100).map(readSheetLine);
  refuseRepeats(given, lines);
  const triggers = given.list('triggers', 'triggers', 12).map(readTrigger);
  return {
    code: readCode(given, 'code'),
    name: given.needText('name', 'the name of the check', TEXT.name),
    triggers: triggers.filter((trigger) => trigger !== null),
    appliesTo: readAppliesTo(given.object('appliesTo')),
    safety: given.flag('safety', 'can someone be hurt if it is left out?') ?? required(given, 'safety'),
    blocks: given.needChoice('blocks', 'which jobs it stops when overdue', ['all-jobs', 'commercial-jobs', 'none']),
    proof: given.has('proof')
      ? {
          what: proof.needText('what', 'what proof rides with the trailer', TEXT.line),
          keepMonths: proof.needNumber('keepMonths', R.keepMonths),
        }
      : null,
    work: readWork(given.object('work')),
    leadDays: given.needNumber('leadDays', R.leadDays),
    ownerPersonId,
    backupPersonId,
    source: given.needText('source', 'where the interval comes from', TEXT.page),
    lines,
  };
}

function required(given: Given, key: string): boolean {
  if (!given.has(key)) given.refuse(key, 'Say whether someone can be hurt if it is left out (true or false).');
  return true;
}

function readCode(given: Given, key: string): string {
  const code = given.needText(key, 'a short code', TEXT.name);
  if (code !== '' && !CODE.test(code)) {
    given.refuse(key, 'Write the code in small letters, digits and single hyphens, such as hub-repack.');
  }
  return code;
}

function readTrigger(trigger: Given): Trigger | null {
  const kind = trigger.needChoice('kind', 'what makes it fall due', [
    'days',
    'months',
    'distance',
    'trips',
    'event',
    'fixed-date',
  ]);
  switch (kind) {
    case 'days':
      return { kind, every: trigger.needNumber('every', R.everyDays) };
    case 'months':
      return {
        kind,
        every: trigger.needNumber('every', R.everyMonths),
        toMonthEnd: trigger.flag('toMonthEnd', 'does it run to the end of the month?') ?? false,
      };
    case 'distance':
      return { kind, everyKm: trigger.needNumber('everyKm', R.everyDistance) };
    case 'trips':
      return { kind, every: trigger.needNumber('every', R.everyTrips) };
    case 'event':
      return {
        kind,
        event: trigger.needChoice('event', 'the event', CHECK_EVENTS),
        atKm: [...(trigger.numbers('atKm', R.afterEvent, 12) ?? [])].sort((a, b) => a - b),
      };
    case 'fixed-date':
      return { kind, date: trigger.needChoice('date', 'the date it follows', ['registration', 'insurance']) };
  }
}

function readAppliesTo(given: Given): AppliesTo {
  return {
    bodies: some(given.choices('bodies', 'the bodies', BODIES)),
    suspensions: some(given.choices('suspensions', 'the suspensions', SUSPENSIONS)),
    brakes: some(given.choices('brakes', 'the brakes', BRAKES)),
    hitches: some(given.choices('hitches', 'the hitches', HITCHES)),
    deckMaterials: some(given.choices('deckMaterials', 'the decks', DECK_MATERIALS)),
    lubricants: some(given.choices('lubricants', 'the lubricants', ['grease', 'oil'] as const)),
    ramps: some(given.choices('ramps', 'the ramps', RAMPS)),
  };
}

/** No choice at all would apply to no trailer; it means that the condition is not set. */
function some(list: readonly string[] | null): readonly string[] | null {
  return list === null || list.length === 0 ? null : list;
}

function readWork(work: Given): CheckKind['work'] {
  return {
    hours: work.needNumber('hours', R.workHours),
    place: work.needChoice('place', 'where it is done', ['shop', 'yard', 'road']),
    parts: work.texts('parts', 'the parts to bring', TEXT.line, 40),
    bundle: work.text('bundle', 'the visit it shares', TEXT.name),
    together: work.texts('together', 'the work done on the same visit', TEXT.line, 40),
  };
}

function readSheetLine(line: Given): SheetLine {
  const kind = line.needChoice('kind', 'how the line is answered', ['tick', 'measure', 'photo']);
  const quantity = line.choice('quantity', 'what is measured', MEASURED_QUANTITIES);
  if (kind === 'measure' && quantity === null && !line.has('quantity')) {
    line.refuse('quantity', `Say what is measured: ${MEASURED_QUANTITIES.join(', ')}.`);
  }
  if (kind !== 'measure' && quantity !== null) {
    line.refuse('quantity', 'Leave this out, or make it a line that is measured.');
  }
  return {
    code: readCode(line, 'code'),
    text: line.needText('text', 'what to look at', TEXT.line),
    kind,
    quantity,
    safety: line.flag('safety', 'can someone be hurt if it is bad?') ?? required(line, 'safety'),
  };
}

function refuseRepeats(given: Given, lines: readonly SheetLine[]): void {
  lines.forEach((line, place) => {
    if (lines.findIndex((other) => other.code === line.code) !== place) {
      given.refuse(`lines[${place}].code`, 'Give each line a code of its own.');
    }
  });
}
