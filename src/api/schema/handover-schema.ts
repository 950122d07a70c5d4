import { z } from 'zod';
import { PLUG_TRIALS, SEEN_CONDITIONS, SEEN_THINGS } from '../../rules/facts/handover.js';
import { PLAUSIBLE_BUILD } from '../../rules/facts/plausible.js';
import { TEXT } from '../../use-cases/input/given.js';
import { FIT } from './fit-schema.js';
import { FLAG } from './result-schema.js';
import { TIRE } from './trailer-schema.js';
import { computed, DAY, ID, known, maybe, quantity, text } from './values.js';

const THING = z.enum(SEEN_THINGS);
const LISTED = z.enum(SEEN_THINGS).exclude(['customer-ball']).describe('What was looked at.');
const CONDITION = z
  .enum(SEEN_CONDITIONS)
  .describe('Rubbed is a mark that use leaves; bent and broken are not; stiff may be either.');
const POSITION = text(TEXT.mark, 'Of a thing of which there are several: a wheel position such as 1L, left, right.');
const NOTE = text(TEXT.line, 'What else there is to say of it.');
const BALL = {
  sizeM: quantity(PLAUSIBLE_BUILD.ballSize),
  ratingKg: quantity(PLAUSIBLE_BUILD.ballRating),
};
const PLUG = z.enum(PLUG_TRIALS).describe('What plugging in worked; null where nobody tried.');
const SIGNED_NAME = { name: text(TEXT.name, 'Typed by whoever signs.') };
const STROKE = {
  points: z
    .array(z.int().min(0).max(2_000))
    .min(2)
    .max(400)
    .describe("x, y, x, y, … in thousandths of the pad's width, y downward."),
};

const SEEN = z
  .object({
    thing: THING,
    condition: CONDITION,
    ...known({
      position: POSITION,
      tire: z.object(known(TIRE)).describe('Of a tire: what its sidewall says.'),
      ballSizeM: quantity(PLAUSIBLE_BUILD.ballSize),
      note: NOTE,
    }),
    photoIds: z.array(ID),
  })
  .meta({ id: 'Seen', description: 'One thing as it was seen.' });

const HITCH = z.object({
  ball: z.object(known(BALL)).describe("The customer's own."),
  ...known({ swappedTo: z.object(known(BALL)).describe("The yard's ball, put on in its place."), plug: PLUG }),
});

export const HANDOVER = z
  .object({
    id: ID,
    trailerId: ID,
    way: z.enum(['out', 'back']),
    on: DAY,
    customer: z.string(),
    byName: z.string(),
    seen: z.array(SEEN),
    ...known({
      jobId: ID,
      outId: ID.describe('Of a return: the way out that it ends.'),
      hitch: HITCH.describe('Of a way out: what the customer came to tow with.'),
      signature: z.object({ ...known(SIGNED_NAME), strokes: z.array(z.object(STROKE)) }).describe("The customer's."),
    }),
  })
  .meta({ id: 'Handover', description: 'A hired trailer handed to its customer, or taken back.' });

const TOLD = {
  on: DAY,
  seen: z
    .array(
      z.strictObject({
        thing: LISTED,
        condition: CONDITION,
        ...maybe({
          position: POSITION,
          tire: z
            .strictObject(maybe(TIRE))
            .describe('What was read of the sidewall; left out: taken for the one on file.'),
          note: NOTE,
        }),
      }),
    )
    .min(1)
    .max(60),
  ...maybe({
    photos: z
      .array(
        z.strictObject({
          thing: LISTED.describe('What it shows; it must be in the list of what was seen.'),
          ...maybe({ position: POSITION }),
          mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp']),
          base64: z.string().describe('The bytes of the picture in base64; at most 8 MB each.'),
        }),
      )
      .max(24),
    signature: z.strictObject(
      maybe({ ...SIGNED_NAME, strokes: z.array(z.strictObject(STROKE)).max(60).describe('Drawn with a finger.') }),
    ),
    sendId: ID.describe('Sent twice with the same id and content, it is recorded once.'),
  }),
};

const BALL_BODY = z.strictObject({ sizeM: BALL.sizeM, ...maybe({ ratingKg: BALL.ratingKg }) });

export const HAND_OUT_BODY = z
  .strictObject({
    ...TOLD,
    hitch: z
      .strictObject({
        ball: BALL_BODY.partial().describe("The customer's own; its size is needed unless the trailer takes a pintle."),
        ...maybe({ swappedTo: BALL_BODY.describe("The yard's ball, put on in its place."), plug: PLUG }),
      })
      .describe('What the customer came to tow with.'),
    ...maybe({
      jobId: ID.describe('The job it goes out for, booked on this trailer.'),
      customer: text(TEXT.name, "Whom it is handed to; the job's customer when left out."),
    }),
  })
  .meta({ id: 'HandOutBody' });

export const TAKE_BACK_BODY = z
  .strictObject({
    ...TOLD,
    ...maybe({
      ballBack: z.boolean().describe("Where the customer's ball was changed: whether theirs is back on their mount."),
    }),
  })
  .meta({ id: 'TakeBackBody' });

const VERDICT = z.enum(['match', 'refused', 'cannot-say']);

export const HANDED_OUT = z.object({
  handoverId: ID,
  release: z.object({
    ball: z
      .object({
        verdict: VERDICT,
        sizesDiffer: z.boolean(),
        overKg: computed('What the loaded trailer weighs more than the ball is rated for, kg.').nullable(),
        lacks: z.array(z.enum(['coupler-size', 'ball-size', 'ball-rating', 'gross'])).describe('What is not known.'),
      })
      .nullable()
      .describe('Null where the trailer takes no ball.'),
    plug: z.object({
      verdict: VERDICT,
      dead: z.enum(['lamps', 'brakes']).nullable(),
      lacks: z.array(z.enum(['plug', 'brakes'])).describe('What is not known.'),
    }),
  }),
});

const CHANGE = z
  .object({
    thing: THING,
    position: z.string().nullable(),
    was: SEEN.nullable().describe('As it went out; null where nobody looked at it.'),
    is: SEEN,
    differs: z
      .array(z.enum(['size', 'kind', 'load-range', 'max-load', 'date-code']))
      .describe('Of a tire: the marks that differ.'),
    answer: z.enum(['chargeable', 'wear', 'inspect']).describe('Inspect: may be either; the shop looks first.'),
    keepsIn: z.boolean().describe('Whether someone can be hurt if it goes out like this.'),
  })
  .meta({ id: 'HandoverChange' });

const TAKEN = z.object({
  customer: z.string(),
  changes: z.array(CHANGE),
  unseen: z.array(SEEN).describe('Seen on the way out and not looked at again.'),
  hold: z.object({ because: z.array(CHANGE) }).nullable(),
  swappedTires: z.array(z.object({ position: z.string(), marks: z.object(known(TIRE)) })),
  owesBall: z.boolean().describe("Whether the customer's own ball is still to be put back."),
});

const AT_RISK = z
  .object({
    jobId: ID,
    name: z.string(),
    startsOn: DAY,
    endsOn: DAY,
    fit: FIT,
    substitutes: z.array(
      z.object({
        trailerId: ID,
        yardNumber: z.string(),
        verdict: z.enum(['go', 'go-after', 'weigh-first', 'cannot-say', 'no-go']),
        marginShare: computed('What it leaves of its tightest limit, as a share.').nullable(),
      }),
    ),
  })
  .meta({ id: 'JobAtRisk', description: 'The next job booked on the trailer, where it cannot just go.' });

export const TAKEN_BACK = z.object({
  handoverId: ID,
  taken: TAKEN,
  holdId: ID.nullable().describe('The hold that what changed put on the trailer.'),
  fittedPartIds: z.array(ID).describe('Tires put on file in place of those that went out.'),
  atRisk: AT_RISK.nullable(),
  raised: z.array(FLAG).describe('Flags that this put up.'),
});

export const HANDOVER_READ = z.object({
  record: HANDOVER,
  standing: z.boolean(),
  out: HANDOVER,
  back: HANDOVER.nullable(),
  taken: TAKEN.nullable(),
  atRisk: AT_RISK.nullable(),
});

export const HANDOVER_WITHDRAWN = z.object({ handoverId: ID });
