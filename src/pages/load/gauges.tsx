import type { LoadAnswer } from '../../rules/fit/load-answer.js';
import type { Comparison } from '../../rules/load/limit.js';
import type { Newtons } from '../../rules/units/force.js';
import { showForce, showShare } from '../components/show-quantity.js';
import { bandWords } from '../words/flag-words.js';
import { limitWords } from '../words/limit-words.js';

/** One limit as a gauge: how much of it is used, and by how much it is passed or not. */
interface Gauge {
  readonly name: string;
  readonly used: number | null;
  readonly reads: string;
  readonly standing: 'inside' | 'near' | 'over' | 'unknown';
  /** In place of the usual word. */
  readonly said?: string;
}

const STANDING_WORDS: Readonly<Record<Gauge['standing'], string>> = {
  inside: 'inside',
  near: 'weigh it first',
  over: 'over',
  unknown: 'not known',
};

/** Every limit in a fixed order, so that none jumps while a machine is dragged: the tongue first, the jack last. */
export function Gauges({ answer }: { readonly answer: LoadAnswer }) {
  return (
    <ul class="gauges" aria-label="Every limit">
      {gaugesOf(answer).map(({ name, used, reads, standing, said }) => (
        <li key={name} class={`gauge-${standing}`}>
          <span class="gauge-name">
            <span class="strong">{name}</span>
            <span class="number">{reads}</span>
          </span>
          <svg viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
            <rect class="g-scale" width="100" height="6" />
            <rect class="g-used" width={Math.min(Math.max(used ?? 0, 0), 1.1) * (100 / 1.1)} height="6" />
            <rect class="g-limit" x={100 / 1.1 - 0.5} width="1" height="6" />
          </svg>
          <span class="small">{said ?? STANDING_WORDS[standing]}</span>
        </li>
      ))}
    </ul>
  );
}

function gaugesOf(answer: LoadAnswer): readonly Gauge[] {
  const { comparisons } = answer.loadCheck;
  const others = comparisons.filter(({ limit }) => limit.kind !== 'tire');
  return [
    shareGauge(answer),
    ...others.map((comparison) => gaugeOf(limitWords(comparison.limit), comparison)),
    ...tightestTires(comparisons).map((comparison) => gaugeOf(limitWords(comparison.limit), comparison)),
    ...answer.planks.map(({ name, check }): Gauge => {
      const planks = check.worst;
      return {
        name: `Planks under ${name}`,
        used: planks === null ? null : planks.contactN / planks.allowedN,
        reads: planks === null ? 'cannot be worked out' : reading(planks.contactN, planks.allowedN),
        standing: PLANKS[check.standing],
      };
    }),
    ...jackGauge(answer),
  ];
}

const PLANKS = { inside: 'inside', doubtful: 'near', over: 'over', breaks: 'over', unknown: 'unknown' } as const;

/** The share on the tongue, over its band. */
function shareGauge({ loadCheck: { tongueN, tongueShare, tongueBand } }: LoadAnswer): Gauge {
  const { low, high, standing } = tongueBand;
  const said =
    tongueN === null
      ? 'not known'
      : `${showForce(tongueN)}${tongueShare === null ? '' : `, ${showShare(tongueShare)}`}`;
  return {
    name: 'Tongue',
    used: tongueShare === null ? null : tongueShare / (high ?? low * 1.5),
    reads: `${said} (${bandWords(low, high)})`,
    standing: standing === 'inside' ? 'inside' : standing === 'unknown' ? 'unknown' : 'over',
    ...(standing === 'low' ? { said: 'too light: it may sway' } : standing === 'high' ? { said: 'too heavy' } : {}),
  };
}

function gaugeOf(name: string, { loadN, limit, standing }: Comparison): Gauge {
  return { name, used: loadN / limit.limitN, reads: reading(loadN, limit.limitN), standing };
}

/** Of each axle the tire with least left. */
function tightestTires(comparisons: readonly Comparison[]): readonly Comparison[] {
  const ofAxle = Map.groupBy(
    comparisons.filter(({ limit }) => limit.kind === 'tire'),
    ({ limit }) => limit.subject?.charAt(0) ?? '',
  );
  return [...ofAxle.values()].map((tires) => tires.reduce((least, one) => (one.marginN < least.marginN ? one : least)));
}

function jackGauge({ jack }: LoadAnswer): readonly Gauge[] {
  if (jack === null) return [];
  const limitN = jack.liftN ?? jack.supportN;
  if (limitN === null) return [];
  return [
    {
      name: jack.count !== null && jack.count > 1 ? 'Jacks, unhitched' : 'Jack, unhitched',
      used: jack.loadN / limitN,
      reads: `${jack.isLeast ? 'at least ' : ''}${reading(jack.loadN, limitN)}`,
      standing: jack.short === null ? (jack.count === null && jack.loadN > limitN ? 'unknown' : 'inside') : 'over',
    },
  ];
}

function reading(loadN: Newtons, limitN: Newtons): string {
  return `${showForce(loadN)} of ${showForce(limitN)}`;
}
