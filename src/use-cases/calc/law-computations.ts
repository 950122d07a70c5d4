import { z } from 'zod';
import { lastGoodDay } from '../../rules/inspection/triggers/months.js';
import { brakesRequired } from '../../rules/law/brakes.js';
import { axleRunLimit, bridgeFormula, bridgeLimit } from '../../rules/law/bridge.js';
import { couplingClass } from '../../rules/law/coupling.js';
import { combination } from '../../rules/trailer/combination.js';
import { readVin } from '../../rules/trailer/vin.js';
import { computation } from './computation.js';
import { answer, answerOrNull, civilDay, kilograms, length, plain, words } from './values.js';

const SPAN = () => length('From the first to the last axle', z.number().min(0).max(100));
const ORNULL = (what: string) => kilograms(what).nullable();

export const LAW_COMPUTATIONS = [
  computation({
    name: 'bridge-formula',
    about: 'What the Federal bridge formula lets a run of consecutive axles carry.',
    source: '23 CFR 658.17(e), to the nearest 500 lb, an exact half down.',
    input: z.object({ lengthM: SPAN(), axles: plain('Axles in the run', z.int().min(2).max(20)) }),
    output: z.object({ exactKg: answer('Before rounding, kg'), limitKg: answer('As the table prints it, kg') }),
    example: { lengthM: 15.5448, axles: 5 },
    compute: ({ lengthM, axles }) => ({ exactKg: bridgeFormula(lengthM, axles), limitKg: bridgeLimit(lengthM, axles) }),
  }),
  computation({
    name: 'legal-axle-weight',
    about:
      'What the law of the Interstate System lets consecutive axles carry: as one axle, a tandem or by the formula.',
    source: '23 CFR 658.5 and 658.17(c) to (e). State roads and permits differ: check your state.',
    input: z.object({ lengthM: SPAN(), axles: plain('Axles in the run', z.int().min(1).max(20)) }),
    output: z.object({ rule: z.enum(['single', 'tandem', 'formula']), limitKg: answer('Together, kg') }),
    example: { lengthM: 0.8636, axles: 2 },
    compute: ({ lengthM, axles }) => axleRunLimit(lengthM, axles),
  }),
  computation({
    name: 'licence-line',
    about: 'Which federal weights truck and trailer together pass; it points to the rules and asserts nothing.',
    source: '49 CFR 390.5, 383.5 and 383.91(a). Uses, exemptions and States differ: check your state.',
    input: z.object({
      truckGvwrKg: ORNULL('Rating of the truck'),
      truckMassKg: ORNULL('The truck as weighed'),
      truckGcwrKg: ORNULL("Maker's rating of the combination"),
      trailerGvwrKg: ORNULL('Rating of the trailer'),
      trailerMassKg: ORNULL('The trailer as hauled'),
    }),
    output: z.object({
      combinationKg: answerOrNull('Together, kg'),
      commercial: z.boolean().nullable().describe('Over 10,000 lb in commerce; null where it cannot be said.'),
      licence: z.enum(['A', 'B', 'none']).nullable().describe('By weight alone; null where it cannot be said.'),
    }),
    example: {
      ...{ truckGvwrKg: 5080.235, truckMassKg: null, truckGcwrKg: null },
      ...{ trailerGvwrKg: 6985.322, trailerMassKg: null },
    },
    compute: ({ truckGvwrKg, truckMassKg, truckGcwrKg, trailerGvwrKg, trailerMassKg }) => {
      const { combinationKg, commercial, cdl } = combination({
        towVehicle: { gvwrKg: truckGvwrKg, massKg: truckMassKg, gcwrKg: truckGcwrKg },
        trailerGvwrKg,
        trailerGrossKg: trailerMassKg,
      });
      return { combinationKg, commercial, licence: cdl };
    },
  }),
  computation({
    name: 'brakes-required',
    about: 'Whether every wheel of a trailer in commerce must have a brake, by its actual weights.',
    source: '49 CFR 393.42(a) and (b)(3). State lines lie between 1,500 and 4,500 lb: check your state.',
    input: z.object({
      grossKg: kilograms('Trailer as hauled'),
      axlesKg: ORNULL('What its axles carry'),
      towingAxlesKg: ORNULL('What the axles of the truck carry together'),
    }),
    output: z.object({ required: z.boolean().nullable().describe('Null where a weight decides that was not given.') }),
    example: { grossKg: 1315.418, axlesKg: 1133.981, towingAxlesKg: 2721.554 },
    compute: (given) => ({ required: brakesRequired(given) }),
  }),
  computation({
    name: 'coupling-class',
    about: 'What coupler and safety chains must hold at least before they break, by the rating of the trailer.',
    source: 'SAE J684 as copied in Maryland COMAR 11.13.08.10 and a public glossary; the standard itself was not read.',
    input: z.object({ gvwrKg: kilograms('Rating of the trailer') }),
    output: z.object({
      class: answerOrNull('1 to 4, above 10,000 lb none'),
      chainBreakKg: answerOrNull('Each chain, kg'),
      couplerBreakKg: answerOrNull('The coupler when pulled, kg'),
    }),
    example: { gvwrKg: 3175.147 },
    compute: ({ gvwrKg }) => {
      const found = couplingClass(gvwrKg);
      return {
        class: found?.number ?? null,
        chainBreakKg: found?.chainBreakKg ?? null,
        couplerBreakKg: found?.couplerBreakKg ?? null,
      };
    },
  }),
  computation({
    name: 'vin',
    about: 'Whether a vehicle identification number can be right, who made it and which years it can mean.',
    source: '49 CFR 565.13 and 565.15. A good check digit is no proof.',
    input: z.object({ vin: words('As on the plate') }),
    output: z.object({
      reading: z.enum(['right', 'bad-character', 'bad-length', 'bad-check-digit']),
      maker: z.string().nullable().describe('Maker, by the first three and of small makers three more characters.'),
      modelYears: z.array(z.int()).describe('One or two years; empty where the code means none.'),
    }),
    example: { vin: '1X9BF2022A0LM1234' },
    compute: ({ vin }) => {
      const read = readVin(vin);
      return read.kind === 'right'
        ? { reading: read.kind, maker: read.maker, modelYears: [...read.modelYears] }
        : { reading: read.kind, maker: null, modelYears: [] };
    },
  }),
  computation({
    name: 'annual-inspection-last-day',
    about: 'The last day on which a periodic inspection is good.',
    source: '49 CFR 396.17(c), the anniversary by our reading; by a State program 396.17(f), the end of its month.',
    input: z.object({
      passedOn: civilDay('Day it passed'),
      by: z.enum(['own', 'state']).describe('`state`: a State, Canadian or Mexican program.'),
    }),
    output: z.object({ lastGoodDay: z.string().describe('The last good day.') }),
    example: { passedOn: '2024-03-15', by: 'state' },
    compute: ({ passedOn, by }) => ({
      lastGoodDay: lastGoodDay({ kind: 'months', every: 12, toMonthEnd: true }, { doneOn: passedOn, inspectedBy: by }),
    }),
  }),
];
