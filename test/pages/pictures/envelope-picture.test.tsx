import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { DEMO_TRAILERS } from '../../../seeds/demo/trailers.js';
import { EnvelopePicture } from '../../../src/pages/pictures/envelope-picture.js';
import { day } from '../../../src/rules/calendar/civil-date.js';
import { cargoEnvelope } from '../../../src/rules/trailer/cargo-envelope.js';
import { loadLimits } from '../../../src/rules/trailer/load-limits.js';
import { metres } from '../../../src/rules/units/length.js';
import { kg } from '../../../src/rules/units/mass.js';

const ENVELOPES = DEMO_TRAILERS.map(({ trailer, build: demo }) => {
  const build = { ...demo, id: 'b', effectiveFrom: day('2024-01-01') };
  const limits = loadLimits({ build, tires: [], coldPressures: new Map(), towVehicle: null });
  const raisedM = limits.torsion === null ? null : metres(0);
  return [trailer.yardNumber, cargoEnvelope({ build, limits, raisedM })] as const;
});

const drawn = (envelope: (typeof ENVELOPES)[number][1], point = { balancePointM: metres(4), cargoKg: kg(2_000) }) =>
  renderToString(
    <EnvelopePicture envelope={envelope} yardNumber="T-99" point={point} isInside={true} bestM={metres(4.1)} />,
  );

describe.each(ENVELOPES)('the envelope of %s', (_number, envelope) => {
  const picture = drawn(envelope);

  it('is drawn with each limit numbered and named, or says what is missing', () => {
    expect(picture).not.toMatch(/NaN|Infinity|undefined/);
    if (envelope.kind === 'unknown') {
      expect(picture).toContain('The envelope cannot be drawn. Not known:');
      return;
    }
    const numbers = [...picture.matchAll(/class="p-edge-no"[^>]*>(\d+)</g)].map((found) => Number(found[1]));
    const named = picture.match(/<li>/g) ?? [];
    expect(numbers).toEqual(named.map((_, index) => index + 1));
    expect(numbers.length).toBeGreaterThanOrEqual(3);
    expect(picture).toContain('role="img" aria-label="What T-99 may carry, and where"');
    expect(picture).toContain('Inside: 4,409 lb on the deck');
  });

  it('keeps to scale: every corner of the polygon stands where its weight and place put it', () => {
    if (envelope.kind === 'unknown') return;
    const path = /class="p-region" d="M([^"]+)Z"/.exec(picture)?.[1] ?? '';
    const points = path.split('L').map((pair) => pair.split(' ').map(Number) as [number, number]);
    const corner = envelope.edges.find(({ from }) => from.cargoKg > 0)?.from;
    const heaviest = Math.max(...envelope.edges.map(({ from }) => from.cargoKg));
    const top = Math.min(...points.map(([, y]) => y));
    // One scale for all weights: the corner's share of the heaviest is its share of the height.
    const near = points.find(([x]) => Math.abs(x - (corner?.balancePointM ?? 0) * 100) < 0.06);
    expect(near).toBeDefined();
    expect(points.some(([, y]) => Math.abs(y / top - (corner?.cargoKg ?? 0) / heaviest) < 0.01)).toBe(true);
  });
});

describe('a point outside', () => {
  it('is a cross and is called so', () => {
    const known = ENVELOPES.find(([, envelope]) => envelope.kind === 'known')?.[1];
    if (known === undefined) throw new Error('no trailer of the demo yard has an envelope');
    const picture = renderToString(
      <EnvelopePicture
        envelope={known}
        yardNumber="T-99"
        point={{ balancePointM: metres(4), cargoKg: kg(20_000) }}
        isInside={false}
        bestM={null}
      />,
    );
    expect(picture).toContain('p-out');
    expect(picture).toContain('Outside: 44,092 lb on the deck');
  });
});
