import { latest } from '../calendar/civil-date.js';
import { dayNumber, daysAfter, MEAN_YEAR_DAYS, yearsBetween } from '../calendar/day-number.js';
import type { StandingMachine } from '../deck/contact-load.js';
import { deckDates, deckOutlook, type OutlookDays, type OwnDeck } from '../deck/deck-outlook.js';
import { checkPlank, type PlankedDeck } from '../deck/plank-check.js';
import type { WeightBasis } from '../facts/build-sheet.js';
import type { FitInput } from '../fit/fit.js';
import { deckAsked } from '../history/deck-life.js';
import { type MachineOnDeck, machinesOnDeck } from '../history/machines-on-deck.js';
import type { TrailerOn } from '../history/trailer-on.js';
import { probedDeck } from '../inspection/soft-boards.js';
import { type Metres, metres } from '../units/length.js';
import { kg } from '../units/mass.js';
import { type Basis, type Leaf, type Working, workOut } from './working.js';

interface PlankCase {
  readonly deck: PlankedDeck;
  readonly machine: StandingMachine;
  readonly lostM: Metres;
}

/** How the stress in a plank was worked out, for each machine of a haul whose deck is known well enough. */
export function explainPlanks(trailer: TrailerOn, { load, startsOn }: FitInput): readonly Working[] {
  const build = trailer.buildOn(startsOn);
  if (build === null) return [];
  const { lostM } = probedDeck(trailer);
  return machinesOnDeck({ machineId: null, load }, build, trailer.facts.machines, lostM).flatMap((one) => {
    const basis = load.cargo.find((item) => item.machineId === one.machineId)?.basis ?? 'assumed';
    return explainPlank(one, basis, { deck: build.deck, machine: one.machine, lostM }) ?? [];
  });
}

function explainPlank({ name, check }: MachineOnDeck, basis: WeightBasis, base: PlankCase): Working | null {
  const { worst } = check;
  if (worst === null) return null;
  return workOut<PlankCase>({
    ...{ of: 'plank', subject: name, unit: 'kPa', base },
    formula:
      'P ÷ 4 × (span − contact length ÷ 2) ÷ (boards × width × thickness left² ÷ 6), P on the hardest pressed wheel, track or pad',
    source: 'Simple beam between two crossmembers; strength by NDS, Southern Pine Use Guide or Wood Handbook.',
    leaves: [
      ...massLeaf(base.machine, name, basis),
      { ...{ name: 'contact-load', value: worst.contactN, unit: 'N', basis: 'assumed' }, put: asIs },
      { ...{ name: 'strength', value: worst.allowedKpa, unit: 'kPa', basis: 'published' }, put: asIs },
      ...lengthLeaf('plank-thickness', base.deck.plankThicknessM, (one, value) => ({ ...one, plankThicknessM: value })),
      ...lengthLeaf('span', base.deck.crossmemberSpacingM, (one, value) => ({ ...one, crossmemberSpacingM: value })),
    ],
    compute: ({ deck, machine, lostM }) => checkPlank(deck, machine, lostM).worst?.bendingKpa ?? null,
  });
}

function asIs(base: PlankCase): PlankCase {
  return base;
}

function massLeaf({ massKg }: StandingMachine, name: string, basis: WeightBasis): Leaf<PlankCase>[] {
  if (massKg === null) return [];
  return [
    {
      ...{ name: 'cargo', subject: name, value: massKg, unit: 'kg', basis: basis === 'weighed' ? 'measured' : basis },
      put: (base, value) => ({ ...base, machine: { ...base.machine, massKg: kg(value) } }),
    },
  ];
}

function lengthLeaf(
  name: 'plank-thickness' | 'span',
  value: Metres | null,
  put: (deck: PlankedDeck, value: Metres) => PlankedDeck,
): Leaf<PlankCase>[] {
  if (value === null) return [];
  return [
    {
      ...{ name, value, unit: 'm', basis: 'stated' },
      put: (base, other) => ({ ...base, deck: put(base.deck, metres(other)) }),
    },
  ];
}

interface LifeCase {
  readonly own: OwnDeck;
  readonly on: OutlookDays;
  readonly policy: { readonly decayIndex: number | null; readonly deckLifeYears: number | null };
}

/** The owner's estimate may be off by a third either way. Our choice. */
const ESTIMATE_DOUBT = 1 / 3;

/** How the day by which the deck is as likely as not worn out was worked out; null where there is no forecast. */
export function explainDeckLife(trailer: TrailerOn): Working | null {
  const asked = deckAsked(trailer);
  if (asked === null || probedDeck(trailer).soft.length > 0) return null;
  const { decks, policy } = trailer.facts;
  const base: LifeCase = { ...asked, policy };
  const outlook = deckOutlook(asked.own, decks, policy, asked.on);
  if (outlook === null) return null;
  const { prior } = outlook;
  const basis: Basis = prior.basis === 'setting' ? 'setting' : 'assumed';
  return workOut<LifeCase>({
    ...{ of: 'deck-life', subject: null, unit: 'day', base },
    formula: 'the day by which half of decks that lie today will be worn out, from the estimate and the yard’s decks',
    source: 'Weibull lives with censored decks and a stated prior; the estimate is the owner’s, no published life.',
    leaves: [
      {
        ...{ name: 'life-scale', value: prior.medianYears, unit: 'years', basis },
        doubt: prior.medianYears * ESTIMATE_DOUBT,
        put: (one, years) => ({ ...one, policy: { ...policy, deckLifeYears: years / prior.shelterFactor } }),
      },
      {
        ...{ name: 'age', value: yearsBetween(asked.own.laidOn, asked.on.asOf), unit: 'years', basis: 'stated' },
        put: (one, years) => ({
          ...one,
          own: { ...one.own, laidOn: daysAfter(one.on.asOf, -Math.round(years * MEAN_YEAR_DAYS)) },
        }),
      },
    ],
    compute: ({ own, on, policy: setting }) => {
      const found = deckOutlook(own, decks, setting, {
        ...on,
        countedTo: latest([on.countedTo, own.laidOn]) ?? on.countedTo,
      });
      return found === null ? null : dayNumber(deckDates(found, on.asOf).halfOn);
    },
  });
}
