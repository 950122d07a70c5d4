import { z } from 'zod';
import { explainedFit } from '../../rules/explain/explained-fit.js';
import type { TrailerFacts } from '../../rules/facts/trailer-facts.js';
import { DEFAULT_POLICY } from '../../rules/facts/yard-policy.js';
import { checkJacks } from '../../rules/trailer/jacks.js';
import { loadingOf } from '../../rules/trailer/loading.js';
import { lengthRoom, tooLong, tooWide, widthRoom } from '../../rules/trailer/machine-room.js';
import { kg } from '../../rules/units/mass.js';
import { loadCheck, loadCheckShown, workings, workingsShown } from './answers.js';
import { computation } from './computation.js';
import { EXAMPLE_BUILD, EXAMPLE_LOAD, EXAMPLE_TIRES } from './example-build.js';
import { build, limitsOf, load, loaded, machine, refuseStrayWheels, tires, towVehicle } from './given-facts.js';
import { answerOrNull, civilDay, force } from './values.js';

/** 8,000 lb of a made-up machine on tracks. */
const EXAMPLE_MACHINE = {
  ...{ name: 'machine', massKg: 3628.739, basis: 'weighed', lengthM: 3.6, widthM: 1.8, balancePointM: 1.6 },
  ...{ wheelbaseM: 1.4, clearanceM: 0.25 },
};
const WIDEST = 'Plane statics and trigonometry; clear widths and lengths as entered.';

export const HAUL_COMPUTATIONS = [
  computation({
    name: 'haul-fit',
    about:
      'Whether a trailer with nothing on its record may take a load: the verdict, each reason, and what would help.',
    source: 'Every limit of a build with its own source, as the rules have them. Plate, manuals, local law come first.',
    input: z.object({
      build,
      tires,
      load,
      machine: machine.nullable(),
      towVehicle: towVehicle.nullable(),
      startsOn: civilDay('First day of the haul'),
      endsOn: civilDay('Last day of the haul'),
      commercial: z.boolean().nullable().describe('Whether it is in commerce.'),
      driverHolds: z.enum(['A', 'B', 'none']).nullable().describe('Commercial licence of the driver.'),
    }),
    output: z.object({
      verdict: z.enum(['go', 'go-after', 'weigh-first', 'no-go', 'cannot-say']).describe('The worst of all reasons.'),
      reasons: z.array(z.looseObject({ kind: z.string() })).describe('Each reason the answer is not plain `go`.'),
      remedies: z.array(z.looseObject({ kind: z.string() })).describe('What would make it yes, in the order to try.'),
      parking: z.looseObject({}).nullable().describe('The best place for the machine, where it can be said.'),
      loadCheck: z.object(loadCheck).describe('The load against every limit.'),
      workings,
    }),
    example: {
      ...{ build: EXAMPLE_BUILD, tires: EXAMPLE_TIRES, load: EXAMPLE_LOAD, machine: null, towVehicle: null },
      ...{ startsOn: '2026-06-02', endsOn: '2026-06-02', commercial: false, driverHolds: null },
    },
    compute: ({ build, tires, load, machine, towVehicle, driverHolds, ...haul }) => {
      if (haul.endsOn < haul.startsOn) throw new RangeError('"endsOn" must not lie before "startsOn".');
      refuseStrayWheels(
        build,
        tires.map(({ position }) => position),
        'tires',
      );
      const facts: TrailerFacts = {
        ...UNSEEN,
        builds: [build],
        parts: tires,
        machines: machine === null ? [] : [machine],
      };
      const driver = driverHolds === null ? null : { name: 'driver', cdl: driverHolds };
      const asked = { ...haul, load: loaded(load, machine), towVehicle, driver };
      const found = explainedFit(facts, asked, haul.startsOn);
      const { verdict, reasons, remedies, parking } = found;
      return {
        verdict,
        reasons: reasons.map((one) => ({ ...one })),
        remedies: remedies.map((one) => ({ ...one })),
        parking: parking === null ? null : { ...parking },
        loadCheck: loadCheckShown(found.loadCheck),
        workings: workingsShown(found.workings),
      };
    },
  }),
  computation({
    name: 'machine-loading',
    about:
      'What happens while a machine comes onto a build, and whether it has room: hitch, slope, crest, tilt, width, length.',
    source: WIDEST,
    input: z.object({ build, machine }),
    output: z.object({
      tongueN: answerOrNull('On the hitch with the machine at the tail, nothing under it, N'),
      liftN: answerOrNull('How hard the hitch is pulled up then, N'),
      support: z.string().nullable().describe('What keeps the tail up.'),
      supportLeastN: answerOrNull('Least it takes, N'),
      supportMostN: answerOrNull('Most it can be made to take, N'),
      slope: answerOrNull('Of ramp or tilted deck, radians; at a dovetail the most it can be'),
      friction: answerOrNull('Least coefficient of friction'),
      clearanceNeededM: answerOrNull('Under its middle at the crest, m'),
      hangsUp: z.boolean().nullable().describe('Whether it touches there.'),
      aheadOfPivotM: answerOrNull('How far ahead of the pivot of a gravity tilt it can bring its balance point, m'),
      widthRoomM: answerOrNull('Between fenders or deck edges, m'),
      tooWide: z.boolean().nullable().describe('Null while a width is unknown.'),
      lengthRoomM: answerOrNull('Of the deck, or of its tilting part, m'),
      tooLong: z.boolean().nullable().describe('Null while a length is unknown.'),
    }),
    example: { build: EXAMPLE_BUILD, machine: EXAMPLE_MACHINE },
    compute: ({ build, machine }) => {
      const limits = limitsOf({ build, tires: [], coldPressures: [], towVehicle: null });
      const found = machine.massKg === null ? null : loadingOf(build, limits, machine, kg(machine.massKg));
      const { climb, slope, crest, tilt } = found ?? { climb: null, slope: null, crest: null, tilt: null };
      const [wide, long] = [widthRoom(build), lengthRoom(build)];
      return {
        ...{
          tongueN: climb?.loads.tongueN ?? null,
          liftN: climb?.loads.liftN ?? null,
          support: climb?.support ?? null,
        },
        supportLeastN: climb?.loads.support?.leastN ?? null,
        supportMostN: climb?.loads.support?.mostN ?? null,
        ...{ slope: slope?.angle ?? null, friction: slope?.friction ?? null },
        ...{ clearanceNeededM: crest?.neededM ?? null, hangsUp: crest?.hangsUp ?? null },
        aheadOfPivotM: tilt?.aheadM ?? null,
        widthRoomM: wide?.roomM ?? null,
        tooWide: wide === null || machine.widthM === null ? null : tooWide(build, machine) !== null,
        lengthRoomM: long?.roomM ?? null,
        tooLong: long === null || machine.lengthM === null ? null : tooLong(build, machine) !== null,
      };
    },
  }),
  computation({
    name: 'build-jacks',
    about: 'What the tongue jacks of a build carry unhitched, against what they may lift and hold.',
    source: 'Balance of moments about the axles, standing still on level ground; ratings as marked.',
    input: z.object({ build, tongueN: force('What the coupler carries hitched') }),
    output: z.object({
      loadN: answerOrNull('On all jacks together, N; null while neither capacity is known'),
      isLeast: z.boolean().nullable().describe('Where they stand is unknown: they carry at least this.'),
      liftN: answerOrNull('What they may lift together, N'),
      supportN: answerOrNull('What they may hold together, N'),
      short: z.enum(['lift', 'support']).nullable().describe('What they fall short of.'),
    }),
    example: { build: EXAMPLE_BUILD, tongueN: 5337.8659 },
    compute: ({ build, tongueN }) => {
      const { axleCentreM } = limitsOf({ build, tires: [], coldPressures: [], towVehicle: null });
      const found = checkJacks(build, tongueN, axleCentreM);
      if (found === null) return { loadN: null, isLeast: null, liftN: null, supportN: null, short: null };
      const { loadN, isLeast, liftN, supportN, short } = found;
      return { loadN, isLeast, liftN, supportN, short };
    },
  }),
];

/** A trailer of which nothing but its build is known: nothing done, nothing due. */
const UNSEEN: Omit<TrailerFacts, 'builds' | 'parts' | 'machines'> = {
  trailer: {
    ...{ id: 'trailer', yardNumber: 'trailer', name: null, vin: null, status: 'in-service', stored: null },
    ...{ boughtOn: null, registrationExpiresOn: null, insuranceExpiresOn: null },
  },
  ...{ trips: [], readings: [], jobs: [], checkKinds: [], checkRecords: [], holds: [], decks: [] },
  policy: DEFAULT_POLICY,
};
