import { CHECK_EVENTS, type CheckKind, type Trigger } from '../../rules/facts/check.js';
import { miles, toMiles } from '../../rules/units/distance.js';
import type { CheckKindInput } from '../../use-cases/input/check-kind-input.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import { asText, asYesNo, plain } from './fill-form.js';
import type { FormReader } from './read-form.js';
import { readNumber } from './read-number.js';

const LINES = 'lines';
const APPLIES = ['bodies', 'suspensions', 'brakes', 'hitches', 'deckMaterials', 'lubricants', 'ramps'] as const;

interface ReadTrigger {
  readonly trigger: Trigger;
  /** The field of the form it was typed in. */
  readonly field: string;
}

/** One field for each way to fall due; those left empty ask for nothing. */
export function readTriggers(form: FormReader): readonly ReadTrigger[] {
  const read: ReadTrigger[] = [];
  const days = form.number('trigger.days');
  if (days !== null) read.push({ field: 'trigger.days', trigger: { kind: 'days', every: days } });
  const months = form.number('trigger.months');
  if (months !== null) {
    const toMonthEnd = form.ticked('trigger.toMonthEnd');
    read.push({ field: 'trigger.months', trigger: { kind: 'months', every: months, toMonthEnd } });
  }
  const everyKm = form.miles('trigger.miles');
  if (everyKm !== null) read.push({ field: 'trigger.miles', trigger: { kind: 'distance', everyKm } });
  const trips = form.number('trigger.trips');
  if (trips !== null) read.push({ field: 'trigger.trips', trigger: { kind: 'trips', every: trips } });
  for (const event of CHECK_EVENTS) {
    if (!form.list('trigger.events').includes(event)) continue;
    const field = `trigger.after.${event}`;
    const atKm = (form.text(field) ?? '')
      .split(/[,;]\s*|\s+and\s+|\s+/)
      .filter((text) => text !== '')
      .map((text) => miles(readNumber(text) ?? Number.NaN));
    read.push({ field, trigger: { kind: 'event', event, atKm } });
  }
  for (const date of ['registration', 'insurance'] as const) {
    if (form.list('trigger.dates').includes(date)) {
      read.push({ field: 'trigger.dates', trigger: { kind: 'fixed-date', date } });
    }
  }
  return read;
}

export function readCheckKindForm(form: FormReader, triggers: readonly ReadTrigger[]): CheckKindInput {
  const name = form.need('name');
  const rows = form.rows(LINES, ['text']);
  const proof = form.text('proof.what');
  return {
    code: form.text('code') ?? codeOf(name),
    name,
    triggers: triggers.map(({ trigger }) => trigger),
    appliesTo: Object.fromEntries(
      APPLIES.map((what) => [
        what,
        form.list(`appliesTo.${what}`).length === 0 ? null : form.list(`appliesTo.${what}`),
      ]),
    ),
    safety: form.text('safety') !== 'no',
    blocks: (form.text('blocks') ?? 'none') as CheckKind['blocks'],
    proof: proof === null ? null : { what: proof, keepMonths: form.number('proof.keepMonths') ?? Number.NaN },
    work: {
      hours: form.number('work.hours') ?? Number.NaN,
      place: (form.text('work.place') ?? 'yard') as CheckKind['work']['place'],
      parts: listOf(form.text('work.parts')),
      bundle: form.text('work.bundle'),
      together: listOf(form.text('work.together')),
    },
    leadDays: form.number('leadDays') ?? Number.NaN,
    ownerPersonId: form.text('ownerPersonId'),
    backupPersonId: form.text('backupPersonId'),
    source: form.need('source'),
    lines: Array.from({ length: rows }, (_, row) => {
      const text = form.need(`${LINES}.${row}.text`);
      const asked = form.text(`${LINES}.${row}.asked`) ?? 'tick';
      const measured = asked !== 'tick' && asked !== 'photo';
      return {
        code: form.text(`${LINES}.${row}.code`) ?? codeOf(text),
        text,
        kind: measured ? 'measure' : (asked as 'tick' | 'photo'),
        quantity: measured ? (asked as NonNullable<CheckKind['lines'][number]['quantity']>) : null,
        safety: form.ticked(`${LINES}.${row}.safety`),
      };
    }),
  };
}

/** From the trigger or line a problem names to the field it was typed in. */
export function checkKindProblem(triggers: readonly ReadTrigger[], problem: FieldProblem): FieldProblem {
  const trigger = /^triggers\[(\d+)\]/.exec(problem.field);
  const read = trigger && triggers[Number(trigger[1])];
  if (read) return { field: read.field, message: problem.message };
  const line = /^lines\[(\d+)\]\.(code|quantity|kind)$/.exec(problem.field);
  if (line) return { field: `${LINES}.${line[1]}.text`, message: problem.message };
  if (problem.field === 'code') return { field: 'name', message: problem.message };
  return problem;
}

export function fillCheckKindForm(kind: CheckKind): Record<string, string | readonly string[]> {
  const values: Record<string, string | readonly string[]> = {
    name: kind.name,
    code: kind.code,
    safety: asYesNo(kind.safety),
    blocks: kind.blocks,
    'proof.what': asText(kind.proof?.what ?? null),
    'proof.keepMonths': asText(kind.proof?.keepMonths ?? null),
    'work.hours': plain(kind.work.hours),
    'work.place': kind.work.place,
    'work.parts': kind.work.parts.join('\n'),
    'work.bundle': asText(kind.work.bundle),
    'work.together': kind.work.together.join('\n'),
    leadDays: String(kind.leadDays),
    ownerPersonId: asText(kind.ownerPersonId),
    backupPersonId: asText(kind.backupPersonId),
    source: kind.source,
    ...fillTriggers(kind.triggers),
  };
  for (const what of APPLIES) values[`appliesTo.${what}`] = kind.appliesTo[what] ?? [];
  kind.lines.forEach((line, row) => {
    values[`${LINES}.${row}.text`] = line.text;
    values[`${LINES}.${row}.code`] = line.code;
    values[`${LINES}.${row}.asked`] = line.quantity ?? line.kind;
    values[`${LINES}.${row}.safety`] = line.safety ? 'yes' : '';
  });
  return values;
}

function fillTriggers(triggers: readonly Trigger[]): Record<string, string | readonly string[]> {
  const values: Record<string, string | readonly string[]> = {
    'trigger.events': triggers.flatMap((one) => (one.kind === 'event' ? [one.event] : [])),
    'trigger.dates': triggers.flatMap((one) => (one.kind === 'fixed-date' ? [one.date] : [])),
  };
  for (const trigger of triggers) {
    if (trigger.kind === 'days') values['trigger.days'] = String(trigger.every);
    if (trigger.kind === 'months') {
      values['trigger.months'] = String(trigger.every);
      values['trigger.toMonthEnd'] = trigger.toMonthEnd ? 'yes' : '';
    }
    if (trigger.kind === 'distance') values['trigger.miles'] = plain(toMiles(trigger.everyKm));
    if (trigger.kind === 'trips') values['trigger.trips'] = String(trigger.every);
    if (trigger.kind === 'event') {
      values[`trigger.after.${trigger.event}`] = trigger.atKm.map((at) => plain(toMiles(at))).join(', ');
    }
  }
  return values;
}

/** A short stable name from the long one: `Lamps and plug` → `lamps-and-plug`. */
function codeOf(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
}

/** One a line. */
function listOf(text: string | null): readonly string[] {
  return (text ?? '')
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
}
