import { addDays, type CivilDate, daysBetween } from '../../src/rules/calendar/civil-date.js';
import type { BuildSheet } from '../../src/rules/facts/build-sheet.js';
import type { CargoItem, Load, Machine } from '../../src/rules/facts/load.js';
import type { Trip } from '../../src/rules/facts/use.js';
import { km, miles } from '../../src/rules/units/distance.js';
import { STANDARD_GRAVITY } from '../../src/rules/units/force.js';
import { inch, type Metres, metres } from '../../src/rules/units/length.js';
import { lb } from '../../src/rules/units/mass.js';
import { DEMO_HABITS, type Habit } from './habits.js';
import { spread } from './spread.js';

export type DemoTrip = Omit<Trip, 'id' | 'jobId'>;

/** Two years of hauls of one trailer up to `today`, oldest first. Each fresh demo yard gets the same ones. */
export function demoTrips(
  yardNumber: string,
  build: Pick<BuildSheet, 'empty' | 'axles'>,
  machineOf: (key: string) => Machine,
  today: CivilDate,
): readonly DemoTrip[] {
  return DEMO_HABITS.filter((habit) => habit.yardNumber === yardNumber)
    .flatMap((habit) => tripsOfHabit(habit, build, machineOf(habit.machine), today))
    .sort((a, b) => (a.startedOn < b.startedOn ? -1 : 1));
}

function tripsOfHabit(
  habit: Habit,
  build: Pick<BuildSheet, 'empty' | 'axles'>,
  machine: Machine,
  today: CivilDate,
): DemoTrip[] {
  const next = spread(`${habit.yardNumber} ${habit.machine}`);
  // Apart from the other, so that what crews tell changes nothing of where they drove.
  const told = spread(`${habit.yardNumber} ${habit.machine} told`);
  const gapDays = 30 / habit.tripsAMonth;
  const trips: DemoTrip[] = [];
  for (let ago = habit.fromDaysAgo - gapDays * next(); ago >= habit.toDaysAgo; ago -= gapDays * (0.5 + next())) {
    const startedOn = addDays(today, -Math.round(ago));
    const cargo = cargoOf(habit, machine);
    trips.push({
      startedOn,
      endedOn: startedOn,
      distanceKm: miles(Math.round(habit.milesLow + (habit.milesHigh - habit.milesLow) * next())),
      machineId: machine.id,
      load: {
        cargo,
        balancePointM: balancePointFor(habit.tongueShare + (next() - 0.5) * 0.01, cargo, build),
        scale: null,
        ...riding(habit, told),
      },
      roads: isWinter(startedOn) ? habit.winter : habit.summer,
    });
  }
  return trips;
}

/** What crews tell of how it rode: most of them now and then, some never. */
function riding(habit: Habit, told: () => number): Pick<Load, 'hitchHeightM' | 'offCentreM' | 'tieDowns'> {
  const { hitchIn, tieDowns } = habit;
  const height = told();
  const side = told();
  return {
    hitchHeightM: hitchIn === null || height > 0.6 ? null : inch(Math.round((hitchIn + height - 0.3) * 8) / 8),
    offCentreM: side > 0.3 ? null : inch(Math.round((side - 0.15) * 20)),
    tieDowns:
      tieDowns === null || told() > 0.7
        ? null
        : [{ count: tieDowns.count, workingLoadKg: lb(tieDowns.workingLb), way: 'direct' }],
  };
}

function cargoOf(habit: Habit, machine: Machine): CargoItem[] {
  return [
    {
      name: machine.name,
      massKg: machine.massKg ?? lb(0),
      basis: machine.basis,
      machineId: machine.id,
      remedy: null,
      fromCouplerM: null,
    },
    ...habit.aboard.map((item) => ({
      name: item.name,
      massKg: lb(item.lb),
      basis: 'assumed' as const,
      machineId: null,
      remedy: item.remedy,
      fromCouplerM: null,
    })),
  ];
}

/** Where the cargo must sit for this share of the gross weight on the hitch: moments about the middle of the axles. */
function balancePointFor(
  share: number,
  cargo: readonly CargoItem[],
  build: Pick<BuildSheet, 'empty' | 'axles'>,
): Metres | null {
  const places = build.axles.map((axle) => axle.fromCouplerM);
  if (places.some((place) => place === null) || build.empty.massKg === null || build.empty.tongueN === null)
    return null;
  const middleM = places.reduce<number>((sum, place) => sum + (place ?? 0), 0) / places.length;
  const cargoKg = cargo.reduce<number>((sum, item) => sum + item.massKg, 0);
  const wantedKg = share * (cargoKg + build.empty.massKg) - build.empty.tongueN / STANDARD_GRAVITY;
  return metres(middleM - (wantedKg / cargoKg) * middleM);
}

function isWinter(date: CivilDate): boolean {
  return ['12', '01', '02', '03'].includes(date.slice(5, 7));
}

/** Hub meter readings taken every six weeks or so, as a meter that began at `startKm` would show them. */
export function demoReadings(
  trips: readonly DemoTrip[],
  startKm: number,
  today: CivilDate,
): { takenOn: CivilDate; shownKm: ReturnType<typeof km> }[] {
  const first = trips[0];
  if (first === undefined) return [];
  const readings: { takenOn: CivilDate; shownKm: ReturnType<typeof km> }[] = [];
  for (let takenOn = first.startedOn; daysBetween(takenOn, today) >= 5; takenOn = addDays(takenOn, 43)) {
    const driven = trips
      .filter((trip) => trip.endedOn <= takenOn)
      .reduce<number>((sum, trip) => sum + (trip.distanceKm ?? 0), 0);
    readings.push({ takenOn, shownKm: km(Math.round(startKm + driven)) });
  }
  return readings;
}
