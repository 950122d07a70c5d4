import { z } from 'zod';
import { breakawayHolds } from '../../rules/law/brakes.js';
import { twoTandemsLimit } from '../../rules/law/bridge.js';
import { safetyDeviceHolds } from '../../rules/law/coupling.js';
import { rearGuardPasses, rearGuardRequired, tapeRetrofitRequired } from '../../rules/law/marking.js';
import { LEGAL_WIDTH_M, needsWarningFlags, needsWidthPermit } from '../../rules/law/size.js';
import { MOST_SECTION_LOST, passesWear } from '../../rules/law/wear.js';
import { computation } from './computation.js';
import { answer, answerOrNull, civilDay, kilograms, length, plain, share } from './values.js';

const WIDTH = z.number().gt(0).max(10);
const BEYOND = z.number().min(0).max(30);
const measure = (what: string) => length(what, BEYOND).nullable();
const SECTIONS = ['pintle-hook', 'drawbar-eye', 'chain-link'] as const;

/** What federal law asks of the trailer itself. State law differs; check your state. */
export const EQUIPMENT_LAW_COMPUTATIONS = [
  computation({
    name: 'two-tandems-weight',
    about: 'What two consecutive tandems may carry together; null when they stand too close for more than the formula.',
    source: '23 U.S.C. 127(a): 34,000 lb each from 36 ft between the first and the last axle.',
    input: z.object({ lengthM: length('From the first to the last axle', z.number().min(0).max(100)) }),
    output: z.object({ limitKg: answerOrNull('Together, kg') }),
    example: { lengthM: 10.9728 },
    compute: ({ lengthM }) => ({ limitKg: twoTandemsLimit(lengthM) }),
  }),
  computation({
    name: 'size-permit',
    about: 'Whether a load is so wide that it needs a permit, or reaches out so far that it needs warning flags.',
    source: '23 CFR 658.15(a) and 658.16 on the National Network; 49 CFR 393.87(a).',
    input: z.object({
      widthM: length('Trailer and load across', WIDTH),
      beyondSideM: length('How far the load reaches past a side', BEYOND),
      beyondRearM: length('How far it reaches past the rear', BEYOND),
    }),
    output: z.object({
      legalWidthM: answer('Widest without a permit, m'),
      permit: z.boolean().describe('Whether its width needs a permit.'),
      flags: z.boolean().describe('Whether it needs flags at its ends.'),
    }),
    example: { widthM: 2.5908, beyondSideM: 0.1016, beyondRearM: 1.2192 },
    compute: ({ widthM, beyondSideM, beyondRearM }) => ({
      legalWidthM: LEGAL_WIDTH_M,
      permit: needsWidthPermit(widthM),
      flags: needsWarningFlags(beyondSideM, beyondRearM),
    }),
  }),
  computation({
    name: 'breakaway-test',
    about: 'Whether a breakaway that was tried does what is asked: brakes go on by themselves and stay on.',
    source: '49 CFR 393.43(d).',
    input: z.object({
      axles: plain('Axles of the trailer', z.int().min(1).max(6)),
      heldMinutes: plain('How long the brakes stayed on, minutes', z.number().min(0).max(10_000)),
      allBrakesWentOn: z.boolean().describe('Whether every required brake went on.'),
    }),
    output: z.object({ holds: z.boolean().describe('Whether it does.') }),
    example: { axles: 2, heldMinutes: 15, allBrakesWentOn: true },
    compute: (tried) => ({ holds: breakawayHolds(tried) }),
  }),
  computation({
    name: 'safety-chain-strength',
    about: 'Whether the safety device of a full trailer or dolly is strong enough for what is towed.',
    source: '49 CFR 393.70(d)(3); for trailers with their tongue on the truck State law asks alike.',
    input: z.object({
      ultimateKg: kilograms('What it breaks at'),
      grossKg: kilograms('Trailer as hauled'),
    }),
    output: z.object({ holds: z.boolean().describe('Whether it is.') }),
    example: { ultimateKg: 5352.39, grossKg: 5443.1084 },
    compute: ({ ultimateKg, grossKg }) => ({ holds: safetyDeviceHolds(ultimateKg, grossKg) }),
  }),
  computation({
    name: 'coupling-wear',
    about: 'Whether a worn pintle hook, drawbar eye or chain link passes the annual inspection.',
    source: 'Appendix A to Part 396 of 49 CFR, 2.b(2)(c), 2.c(2) and 2.e(3)(a).',
    input: z.object({
      part: z.enum(SECTIONS).describe('Which part.'),
      sectionLost: share('Share of its section that is gone'),
    }),
    output: z.object({
      most: answer('Most that may be gone, as a share'),
      passes: z.boolean().describe('Whether it passes.'),
    }),
    example: { part: 'pintle-hook', sectionLost: 0.2 },
    compute: ({ part, sectionLost }) => {
      const limit = MOST_SECTION_LOST[part];
      return { most: limit.value, passes: passesWear(limit, sectionLost) };
    },
  }),
  computation({
    name: 'rear-marking',
    about: 'Whether a trailer of this age and rating needs tape put on and a rear guard, and whether the guard passes.',
    source: '49 CFR 393.13(a) and 393.86; Appendix A to Part 396, 15.a and 15.b. Exemptions aside.',
    input: z.object({
      builtOn: civilDay('Day it was built'),
      gvwrKg: kilograms('Rating of the trailer'),
      widthM: length('Across', WIDTH),
      guard: z
        .strictObject({
          groundM: measure('Lower edge above the ground, empty'),
          insideM: measure('How far its ends lie inside the sides'),
          aheadM: measure('How far it lies ahead of the rear'),
          barM: measure('Its own depth, upright'),
        })
        .nullable()
        .describe('The guard as found; what nobody measured null, and null when there is none.'),
    }),
    output: z.object({
      tape: z.boolean().describe('Whether tape had to be added to an older trailer.'),
      guard: z.boolean().describe('Whether it needs the guard of 1998.'),
      guardPasses: z.boolean().nullable().describe('Whether the guard passes; null when there is none.'),
    }),
    example: {
      ...{ builtOn: '2010-05-01', gvwrKg: 6350.2932, widthM: 2.4384 },
      guard: { groundM: 0.5588, insideM: null, aheadM: null, barM: null },
    },
    compute: ({ builtOn, gvwrKg, widthM, guard }) => ({
      tape: tapeRetrofitRequired({ builtOn, gvwrKg }, widthM),
      guard: rearGuardRequired({ builtOn, gvwrKg }),
      guardPasses: guard === null ? null : rearGuardPasses(builtOn, guard),
    }),
  }),
];
