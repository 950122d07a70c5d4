import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { DEMO_MACHINES } from '../../../seeds/demo/machines.js';
import { DEMO_TRAILERS } from '../../../seeds/demo/trailers.js';
import { sideGeometry, sideMachine } from '../../../src/pages/pictures/side-geometry.js';
import { SideView } from '../../../src/pages/pictures/side-view.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { BuildSheet } from '../../../src/rules/facts/build-sheet.js';
import type { Machine } from '../../../src/rules/facts/load.js';
import { lbf } from '../../../src/rules/units/force.js';
import { inch, metres } from '../../../src/rules/units/length.js';
import { lb } from '../../../src/rules/units/mass.js';
import { unknownBuild } from '../../rules/sample-facts.js';

const BUILDS: readonly (readonly [string, BuildSheet])[] = DEMO_TRAILERS.map(({ trailer, build }) => [
  trailer.yardNumber,
  { ...build, id: 'b', effectiveFrom: day('2024-01-01') },
]);
const MACHINE: Machine = { ...(DEMO_MACHINES[1] as (typeof DEMO_MACHINES)[number]), id: 'm', replacesMachineId: null };

const drawn = (build: BuildSheet, withLoad = true) =>
  renderToString(
    <SideView
      build={build}
      yardNumber="T-99"
      load={
        withLoad
          ? {
              ...{ name: MACHINE.name, machine: MACHINE, massKg: lb(7_200), balancePointM: 4.5, bestM: 4.2 },
              ...{ tongueN: lbf(1_100), axleN: [lbf(4_000), lbf(4_100)] },
            }
          : null
      }
    />,
  );

describe.each(BUILDS)('%s from the side', (_number, build) => {
  const picture = drawn(build);
  const [left = 0, top = 0, width = 0, height = 0] = (/viewBox="([^"]+)"/.exec(picture)?.[1] ?? '')
    .split(' ')
    .map(Number);

  it('has a name, and says in words what it shows', () => {
    expect(picture).toContain('role="img" aria-label="T-99 from the side with');
    expect(picture).toMatch(/<figcaption[^>]*>.*1,100 lb on the tongue.*4,000 lb and 4,100 lb on the axles/);
  });

  it('is drawn with numbers, and nothing of it beyond its edge', () => {
    expect(picture).not.toMatch(/NaN|Infinity|undefined|null/);
    const circles = [...picture.matchAll(/<circle[^>]* cx="(-?[\d.]+)" cy="(-?[\d.]+)"/g)];
    expect(circles.length).toBeGreaterThan(build.axles.length);
    for (const [, x, y] of circles) {
      expect(Number(x)).toBeGreaterThanOrEqual(left);
      expect(Number(x)).toBeLessThanOrEqual(left + width);
      expect(Number(y)).toBeGreaterThanOrEqual(top);
      expect(Number(y)).toBeLessThanOrEqual(top + height);
    }
  });

  it('has its axles where the build sheet has them, to a tenth of a centimetre', () => {
    const tires = [...drawn(build, false).matchAll(/<circle class="p-tire" cx="([\d.]+)"/g)].map((found) =>
      Number(found[1]),
    );
    const places = build.axles.toSorted((a, b) => a.number - b.number).map(({ fromCouplerM }) => fromCouplerM);
    if (places.every((place) => place !== null)) {
      expect(tires).toEqual(places.map((place) => expect.closeTo((place ?? 0) * 100, 0.051)));
    } else expect(tires).toHaveLength(build.axles.length);
  });

  it('has a deck as long as it is, from where it lies', () => {
    const { deck } = sideGeometry(build);
    const { frontFromCouplerM, lengthM } = build.deck;
    if (frontFromCouplerM === null || lengthM === null) return;
    expect(deck.front).toBeCloseTo(frontFromCouplerM * 100, 9);
    expect(deck.rear - deck.front).toBeCloseTo(lengthM * 100, 9);
  });
});

describe('a side view', () => {
  it('of a trailer nobody has described is a usual one, and says so', () => {
    const picture = drawn(unknownBuild(), false);
    expect(picture).toContain(
      'Nothing of its build is recorded. Not recorded, so drawn as is usual: where the deck lies',
    );
    expect(picture).not.toMatch(/NaN|undefined/);
  });

  it('puts a machine where it balances: its front ahead of that by its own balance point', () => {
    // 11 ft long, balancing 76 in behind its front, at 180 in: front at 104 in.
    const machine = sideMachine({ lengthM: inch(132), balancePointM: inch(76) }, inch(180));
    expect(machine).toMatchObject({ front: expect.closeTo(104 * 2.54, 9), length: expect.closeTo(132 * 2.54, 9) });
    expect(machine.isSketch).toBe(false);
    expect(sideMachine({ lengthM: null, balancePointM: null }, metres(4)).isSketch).toBe(true);
  });
});
