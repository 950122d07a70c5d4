import { z } from 'zod';
import { CLEAR_WOOD } from '../../rules/deck/clear-wood.js';
import { LOAD_DURATION } from '../../rules/deck/design-factors.js';
import { allowableStress } from '../../rules/deck/design-values.js';
import { strengthAtMoisture } from '../../rules/deck/moisture.js';
import {
  bendingStress,
  momentAtMiddle,
  momentOffCentre,
  momentOverTwoSpans,
  sag,
  sectionModulus,
  shearStress,
} from '../../rules/deck/plank-bending.js';
import { checkPlank, DECK_LACKS } from '../../rules/deck/plank-check.js';
import { DECK_MATERIALS, WOOD_GRADES, WOODS } from '../../rules/facts/build-sheet.js';
import { computation } from './computation.js';
import { answer, answerOrNull, force, kilograms, length, plain, pressure } from './values.js';

const above = z.number().gt(0).max(100);
const boardWidthM = length('Width of one board', z.number().gt(0).max(1));
const thicknessM = length('Thickness as sawn', z.number().gt(0).max(0.5));
const lostM = length('Rotted off one face', z.number().min(0).max(0.5));
const spanM = length('Between crossmembers', above);
const wood = z.enum(WOODS).describe('The wood as it is sold.');
const grade = z.enum(WOOD_GRADES).describe('The grade stamped on the board.');
const material = z.enum(DECK_MATERIALS).describe('What the deck is made of.');
const treated = z.boolean().describe('Pressure treated against decay.');
const DURATIONS = Object.keys(LOAD_DURATION) as (keyof typeof LOAD_DURATION)[];
const SPECIES = Object.keys(CLEAR_WOOD) as (keyof typeof CLEAR_WOOD)[];

export const PLANK_COMPUTATIONS = [
  computation({
    name: 'plank-bending',
    about: 'Moment, stress, shear and sag of one board under a load on it, as a simple beam between two crossmembers.',
    source: 'Statics of beams; small deflections. Two equal spans by the three-moment equation.',
    input: z.object({
      loadN: force('The load', z.number().gt(0).max(1e6)),
      patchM: length('Length of the load along the board, 0 for a point', z.number().min(0).max(20)),
      spanM,
      centreM: length('Middle of the load from the left crossmember', above).nullable(),
      widthM: boardWidthM,
      thicknessM,
      lostM,
      elasticityKpa: pressure('Modulus of elasticity', z.number().gt(0).max(1e9)),
    }),
    output: z.object({
      momentNm: answer('Greatest moment with the load in the middle, N·m'),
      momentThereNm: answerOrNull('Greatest moment with the load where it was said to be, N·m'),
      twoSpanNm: answer('Under the same load as a point where the board runs on over the next crossmember, N·m'),
      sectionM3: answer('Section modulus of what is left, m³'),
      bendingKpa: answer('Bending stress in the middle, kPa'),
      shearKpa: answer('Shear stress with the load beside a crossmember, kPa'),
      sagM: answer('Sag under a point load in the middle, m'),
    }),
    example: {
      loadN: 6672.3324,
      patchM: 0.2032,
      spanM: 0.4064,
      centreM: 0.2032,
      widthM: 0.18415,
      thicknessM: 0.0381,
      lostM: 0,
      elasticityKpa: 8.687e6,
    },
    compute: ({ centreM, widthM, thicknessM, lostM, elasticityKpa, ...load }) => {
      if (lostM >= thicknessM)
        throw new RangeError('lostM: give less than the thickness; nothing is left of this board.');
      const momentNm = momentAtMiddle(load);
      return {
        momentNm,
        momentThereNm: centreM === null ? null : momentOffCentre(load, centreM).momentNm,
        twoSpanNm: momentOverTwoSpans(load.loadN, load.spanM).spanNm,
        sectionM3: sectionModulus(widthM, thicknessM, lostM),
        bendingKpa: bendingStress(momentNm, widthM, thicknessM, lostM),
        shearKpa: shearStress(load.loadN, widthM, thicknessM, lostM),
        sagM: sag(load, elasticityKpa, widthM, thicknessM, lostM),
      };
    },
  }),
  computation({
    name: 'board-strength',
    about: 'Published design strength of a graded board laid flat, adjusted for moisture, duration, size and use.',
    source: 'NDS 2018 with its supplement, tables 4A and 4B; Southern Pine Use Guide. Null where none is at hand.',
    input: z.object({
      wood,
      grade,
      widthM: boardWidthM,
      thicknessM,
      duration: z.enum(DURATIONS).describe('How long the full load stands on it in all.'),
      wet: z.boolean().describe('Over 19 % moisture.'),
      treated,
    }),
    output: z.object({
      bendingKpa: answerOrNull('Bending, kPa'),
      shearKpa: answerOrNull('Shear, kPa'),
      elasticityKpa: answerOrNull('Modulus of elasticity, kPa'),
      verified: z.boolean().nullable().describe('False: a factor or value is from memory; null where there is none.'),
    }),
    example: {
      wood: 'southern-pine',
      grade: 'no-2',
      widthM: 0.18415,
      thicknessM: 0.0381,
      duration: 'seven-days',
      wet: true,
      treated: true,
    },
    compute: ({ wood, grade, ...use }) =>
      allowableStress(wood, grade, use) ?? { bendingKpa: null, shearKpa: null, elasticityKpa: null, verified: null },
  }),
  computation({
    name: 'clear-wood-strength',
    about: 'Average bending strength of faultless wood of a species at a moisture content.',
    source: 'USDA FPL, Wood Handbook, ch. 5. Not a design value: boards with knots stand about half.',
    input: z.object({
      species: z.enum(SPECIES).describe('The species.'),
      moisturePercent: plain('Moisture content, percent', z.number().min(8).max(200)),
    }),
    output: z.object({
      ruptureKpa: answer('Modulus of rupture, kPa'),
      verified: z.boolean().describe('False: green or dry value is from memory.'),
    }),
    example: { species: 'shortleafPine', moisturePercent: 20 },
    compute: ({ species, moisturePercent }) => {
      const { green, dry, intersectionPercent } = CLEAR_WOOD[species];
      return {
        ruptureKpa: strengthAtMoisture(dry.ruptureKpa, green.ruptureKpa, moisturePercent, intersectionPercent),
        verified: green.verified && dry.verified,
      };
    },
  }),
  computation({
    name: 'machine-on-planks',
    about: 'Whether the planks of a deck bear a machine on wheels, tracks or pads, climbing and parked.',
    source:
      'NDS 2018; Southern Pine Use Guide; Wood Handbook. How weight lies on the contacts is common practice, no source.',
    input: z.object({
      massKg: kilograms('The machine with what hangs on it', z.number().gt(0).max(200_000)),
      contact: z
        .enum(['tires', 'rubber-tracks', 'steel-tracks', 'small-wheels', 'pads'])
        .describe('What it stands on.'),
      contactCount: plain('Wheels, tracks or pads on the deck', z.int().min(1).max(16)),
      contactLengthM: length('One of them along the trailer', z.number().gt(0).max(10)).nullable(),
      contactWidthM: length('One of them across the trailer', z.number().gt(0).max(2)).nullable(),
      material,
      wood: wood.nullable(),
      woodGrade: grade.nullable(),
      treated: treated.nullable(),
      plankThicknessM: thicknessM,
      plankWidthM: boardWidthM.nullable(),
      crossmemberSpacingM: spanM,
      lostM,
    }),
    output: z.object({
      standing: z.enum(['inside', 'doubtful', 'over', 'breaks', 'unknown']),
      lacks: z.array(z.enum(DECK_LACKS)).describe('What is missing to say more.'),
      contactN: answerOrNull('What one wheel, track or pad presses with, N'),
      allowedN: answerOrNull('What it may press with, N'),
      boards: z.int().nullable().describe('Boards that carry it.'),
      bendingKpa: answerOrNull('Bending stress, kPa'),
      allowedKpa: answerOrNull('Strength it is held against, kPa'),
    }),
    example: {
      massKg: 2676.195,
      contact: 'small-wheels',
      contactCount: 4,
      contactLengthM: 0.0762,
      contactWidthM: 0.127,
      material: 'pine',
      wood: 'southern-pine',
      woodGrade: 'no-2',
      treated: true,
      plankThicknessM: 0.0381,
      plankWidthM: 0.18415,
      crossmemberSpacingM: 0.4064,
      lostM: 0,
    },
    compute: ({
      material,
      wood,
      woodGrade,
      treated,
      plankThicknessM,
      plankWidthM,
      crossmemberSpacingM,
      lostM,
      ...machine
    }) => {
      if (lostM >= plankThicknessM)
        throw new RangeError('lostM: give less than the thickness; nothing is left of this board.');
      const deck = { material, wood, woodGrade, treated, plankThicknessM, plankWidthM, crossmemberSpacingM };
      const { standing, lacks, worst } = checkPlank(deck, machine, lostM);
      return {
        standing,
        lacks: [...lacks],
        contactN: worst?.contactN ?? null,
        allowedN: worst?.allowedN ?? null,
        boards: worst?.boards ?? null,
        bendingKpa: worst?.bendingKpa ?? null,
        allowedKpa: worst?.allowedKpa ?? null,
      };
    },
  }),
];
