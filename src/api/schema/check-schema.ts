import { z } from 'zod';
import { BODIES, BRAKES, DECK_MATERIALS, HITCHES, RAMPS, SUSPENSIONS } from '../../rules/facts/build-sheet.js';
import { CHECK_EVENTS, MEASURED_QUANTITIES } from '../../rules/facts/check.js';
import { PLAUSIBLE_SETTING } from '../../rules/facts/plausible.js';
import { TEXT } from '../../use-cases/input/given.js';
import { DAY, ID, known, maybe, quantity, text } from './values.js';

const R = PLAUSIBLE_SETTING;
const CODE = z.string().max(TEXT.name).describe('Small letters, digits and single hyphens, such as hub-repack.');
const AT_KM = z.array(quantity(R.afterEvent)).max(12).describe('Distances after the event, km; empty: at once.');

/** What makes a check fall due. With several, whichever comes first. */
export const TRIGGER = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('days'), every: quantity(R.everyDays) }),
    z.object({ kind: z.literal('months'), every: quantity(R.everyMonths), toMonthEnd: z.boolean() }),
    z.object({ kind: z.literal('distance'), everyKm: quantity(R.everyDistance) }),
    z.object({ kind: z.literal('trips'), every: quantity(R.everyTrips) }),
    z.object({ kind: z.literal('event'), event: z.enum(CHECK_EVENTS), atKm: AT_KM }),
    z.object({ kind: z.literal('fixed-date'), date: z.enum(['registration', 'insurance']) }),
  ])
  .meta({ id: 'Trigger' });

const TRIGGER_BODY = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('days'), every: quantity(R.everyDays) }),
    z.strictObject({
      kind: z.literal('months'),
      every: quantity(R.everyMonths),
      toMonthEnd: z.boolean().nullish().describe('Whether it runs to the end of the month.'),
    }),
    z.strictObject({ kind: z.literal('distance'), everyKm: quantity(R.everyDistance) }),
    z.strictObject({ kind: z.literal('trips'), every: quantity(R.everyTrips) }),
    z.strictObject({ kind: z.literal('event'), event: z.enum(CHECK_EVENTS), atKm: AT_KM.nullish() }),
    z.strictObject({ kind: z.literal('fixed-date'), date: z.enum(['registration', 'insurance']) }),
  ])
  .meta({ id: 'TriggerBody' });

const APPLIES_TO = {
  bodies: z.array(z.enum(BODIES)),
  suspensions: z.array(z.enum(SUSPENSIONS)),
  brakes: z.array(z.enum(BRAKES)),
  hitches: z.array(z.enum(HITCHES)),
  deckMaterials: z.array(z.enum(DECK_MATERIALS)),
  lubricants: z.array(z.enum(['grease', 'oil'])),
  ramps: z.array(z.enum(RAMPS)),
};
const LINE = {
  code: CODE,
  text: text(TEXT.line, 'What to look at.'),
  kind: z.enum(['tick', 'measure', 'photo']),
  safety: z.boolean().describe('Whether someone can be hurt if it is bad; then a bad line holds the trailer.'),
};
const QUANTITY = { quantity: z.enum(MEASURED_QUANTITIES).describe('What is measured; the unit ends its name.') };
const PROOF = {
  what: text(TEXT.line, 'Paper that must ride with the trailer.'),
  keepMonths: quantity(R.keepMonths),
};
const WORK = { hours: quantity(R.workHours), place: z.enum(['shop', 'yard', 'road']) };
const LISTED = {
  parts: z.array(z.string().max(TEXT.line)).max(40).describe('Parts to bring.'),
  together: z.array(z.string().max(TEXT.line)).max(40).describe('Work done on the same visit.'),
};
const BUNDLE = { bundle: text(TEXT.name, 'The visit it shares with other checks.') };
const KIND = {
  code: CODE,
  name: text(TEXT.name, 'The name of the check.'),
  safety: z.boolean().describe('Whether someone can be hurt if it is left out.'),
  blocks: z.enum(['all-jobs', 'commercial-jobs', 'none']).describe('Which jobs it stops when overdue.'),
  leadDays: quantity(R.leadDays),
  source: text(TEXT.page, 'Where the interval comes from.'),
};
const PEOPLE = { ownerPersonId: ID.describe('Who does it.'), backupPersonId: ID.describe('Who stands in.') };

export const CHECK_KIND = z
  .object({
    id: ID,
    ...KIND,
    triggers: z.array(TRIGGER),
    appliesTo: z.object(known(APPLIES_TO)).describe('Which builds it is for; null is no condition.'),
    work: z.object({ ...WORK, ...LISTED, ...known(BUNDLE) }),
    lines: z.array(z.object({ ...LINE, ...known(QUANTITY) })),
    ...known({ ...PEOPLE, proof: z.object(PROOF) }),
  })
  .meta({ id: 'CheckKind' });

export const CHECK_KIND_BODY = z
  .strictObject({
    ...KIND,
    work: z.strictObject({ ...WORK, ...maybe({ ...LISTED, ...BUNDLE }) }),
    ...maybe({
      ...PEOPLE,
      triggers: z.array(TRIGGER_BODY).max(12),
      appliesTo: z.strictObject(maybe(APPLIES_TO)),
      proof: z.strictObject(PROOF),
      lines: z.array(z.strictObject({ ...LINE, ...maybe(QUANTITY) })).max(100),
    }),
  })
  .meta({ id: 'CheckKindBody' });

const CHECKED = {
  result: z.enum(['ok', 'bad']),
  position: text(TEXT.mark, 'Wheel position, such as 1L.'),
  measured: z.object({ quantity: z.enum(MEASURED_QUANTITIES), value: z.number() }),
};
const INSPECTED = {
  inspectedBy: z.enum(['own', 'state']).describe("Who passed it: the yard's own people or a State program."),
  proofOnTrailer: z.boolean().describe('Whether the proof was seen on the trailer.'),
};
const OUTCOME = z.enum(['pass', 'fail']);

/** One check done, as the rules know it. */
export const CHECK_RECORD = z
  .object({
    id: ID,
    checkKindId: ID,
    doneOn: DAY,
    outcome: OUTCOME,
    lines: z.array(z.object({ code: CODE, ...known(CHECKED) })),
    ...known({ byPersonId: ID, ...INSPECTED, costCents: quantity(R.cents) }),
  })
  .meta({ id: 'CheckRecord' });

const PICTURE = z.strictObject({
  mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp']),
  base64: z.string().describe('The bytes of the picture in base64; at most 8 MB each.'),
});

const CHECK_TOLD = {
  doneOn: DAY,
  ...maybe({
    outcome: OUTCOME.describe('Left out: it failed when a line is bad, and passed otherwise.'),
    lines: z
      .array(
        z.strictObject({
          code: CODE,
          ...maybe({
            ...CHECKED,
            measured: z.strictObject({ quantity: z.enum(MEASURED_QUANTITIES).nullish(), value: z.number() }),
          }),
        }),
      )
      .max(400),
    ...INSPECTED,
    byPersonId: ID.describe('One of the yard who did it; whoever records it when left out.'),
    byName: text(TEXT.name, 'Somebody from outside who did it.'),
    note: text(TEXT.page, 'A note.'),
    costCents: quantity(R.cents),
    signedName: text(TEXT.name, 'The name typed under the sheet as signature.'),
    signature: PICTURE.describe('The signature as drawn.'),
    photos: z.array(PICTURE).max(12),
  }),
};
/** What a sheet showed when it was opened. */
const SEEN = z.strictObject({
  yardNumber: text(TEXT.mark, 'The number it showed.'),
  linesMark: text(TEXT.name, 'Stands for its lines: other lines have another.'),
  ...maybe({
    buildSheetId: ID,
    openHoldIds: z.array(ID).max(200),
    lastDoneOn: DAY,
    lastRecordIds: z.array(ID).max(200),
  }),
});
/** Sent twice with the same id, it is recorded once. */
const SHEET_SENDING = maybe({
  sendId: ID,
  paintedNumber: text(TEXT.mark, "The number as read off the trailer; any but this trailer's is refused."),
  seen: SEEN.describe('Tells what to compare with: the answer says what has changed since.'),
});
export const CHECK_BODY = z
  .strictObject({ checkKindId: ID, ...CHECK_TOLD, ...SHEET_SENDING })
  .meta({ id: 'CheckBody' });
export const CORRECT_CHECK_BODY = z.strictObject(CHECK_TOLD).meta({ id: 'CorrectCheckBody' });

export const HOLD = z
  .object({ id: ID, openedOn: DAY, reason: z.string(), openedByName: z.string(), liftedOn: DAY.nullable() })
  .meta({ id: 'Hold' });

export const LIFT_HOLD_BODY = z
  .strictObject(
    maybe({
      reason: text(TEXT.line, 'Why the trailer may go out again. Needed unless a check shows the repair.'),
      checkRecordId: ID.describe('A check of this trailer that passed since the hold was put on.'),
    }),
  )
  .meta({ id: 'LiftHoldBody' });
