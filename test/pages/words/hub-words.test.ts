import { describe, expect, it } from 'vitest';
import { hubWords } from '../../../src/pages/words/hub-words.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import type { HubLife } from '../../../src/rules/history/hub-lives.js';
import { km, miles } from '../../../src/rules/units/distance.js';
import { lbf } from '../../../src/rules/units/force.js';

const HUB: HubLife = {
  partId: 'p',
  position: '1L',
  fittedOn: day('2025-03-04'),
  lifeUsed: 0.0132,
  l10Km: miles(257_000),
  meanLoadN: lbf(2_100),
  countedKm: miles(3_400),
  uncountedKm: km(0),
  isBound: false,
  rating: 'series',
  lacks: null,
};

describe('what is said of a hub', () => {
  it('share, distance, load and where the ratings come from', () => {
    expect(hubWords(HUB)).toBe(
      'Axle 1 left: at most 1.3 % of the rating life used since Tue 4 Mar 2025, in 3,400 mi that did as much as a steady 2,100 lb on the hub (ratings from a textbook table, some factors from memory).',
    );
  });

  it('what was taken for lack of better is said', () => {
    const words = hubWords({ ...HUB, isBound: true, uncountedKm: miles(250), rating: 'memory' });
    expect(words).toContain('tongue weight unknown on some trips and taken as none');
    expect(words).toContain('250 mi more with a load nobody knows');
    expect(words).toContain('from memory, unverified');
  });

  it.each(['position', 'bearing-numbers', 'bearing-rating', 'tire-size', 'loads'] as const)(
    '%s lacking is said',
    (lacks) => {
      const words = hubWords({ ...HUB, lifeUsed: null, l10Km: null, lacks });
      expect(words).toMatch(/^Axle 1 left: not known, because .{20,}\.$/);
    },
  );
});
