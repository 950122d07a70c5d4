import { type Edge, type Envelope, weightOnEdge } from '../../rules/envelope/envelope.js';
import { type Metres, metres } from '../../rules/units/length.js';
import { type Kilograms, kg, lb, toLb } from '../../rules/units/mass.js';
import { showMass, showNumber } from '../components/show-quantity.js';
import { behindWords, edgeLine } from '../words/picture-words.js';
import { lacksWords } from '../words/unknown-words.js';
import { at, Picture } from './picture.js';

interface EnvelopePoint {
  readonly balancePointM: Metres;
  readonly cargoKg: Kilograms;
}

interface EnvelopeProps {
  readonly envelope: Envelope;
  readonly yardNumber: string;
  /** Where this load stands; null while nobody knows. */
  readonly point: EnvelopePoint | null;
  readonly isInside: boolean;
  /** Where the whole load would balance with the machine in its best place. */
  readonly bestM: number | null;
}

/** Height of the plot in the units of its width, which are centimetres of deck. */
const HEIGHT_SHARE = 0.5;

/** How heavy a load may be, over where it balances: inside the line every limit holds. Edges are numbered and named below. */
export function EnvelopePicture({ envelope, yardNumber, point, isInside, bestM }: EnvelopeProps) {
  if (envelope.kind === 'unknown') {
    return (
      <p class="empty">
        The envelope cannot be drawn. Not known: {envelope.lacks.map((one) => lacksWords(one).toLowerCase()).join(', ')}
        .
      </p>
    );
  }
  const edges = merged(envelope.edges.filter((edge) => edge.kind !== 'no-cargo'));
  if (edges.length === 0) {
    return <p class="empty">No load at all is inside every limit: not even the empty trailer.</p>;
  }
  const plot = plotOf(envelope.edges, point);
  return (
    <Picture
      title={`What ${yardNumber} may carry, and where`}
      left={plot.left - 80}
      top={-plot.height - 30}
      width={plot.width + 110}
      height={plot.height + 90}
      words={<EdgeWords edges={edges} point={point} isInside={isInside} unchecked={envelope.bounds.unchecked.length} />}
    >
      <Grid plot={plot} />
      <path class="p-region" d={`M${envelope.edges.flatMap(pointsAlong).map(plot.place).join('L')}Z`} />
      {bestM !== null && <path class="p-chalk" d={`M${at(bestM * 100)} 0V${at(-plot.height)}`} />}
      {edges.map((edge, index) => (
        <EdgeMark key={`${edge.kind} ${edge.subject}`} edge={edge} number={index + 1} plot={plot} />
      ))}
      {point !== null && <Point point={point} isInside={isInside} plot={plot} />}
    </Picture>
  );
}

interface Plot {
  readonly left: number;
  readonly width: number;
  readonly height: number;
  readonly mostKg: number;
  readonly place: (point: EnvelopePoint) => string;
}

function plotOf(edges: readonly Edge[], point: EnvelopePoint | null): Plot {
  const points = [...edges.flatMap((edge) => [edge.from, edge.to]), ...(point === null ? [] : [point])];
  const places = points.map(({ balancePointM }) => balancePointM * 100);
  const left = Math.min(...places) - 20;
  const width = Math.max(...places) + 20 - left;
  const mostKg = Math.max(...points.map(({ cargoKg }) => cargoKg)) * 1.12;
  const height = width * HEIGHT_SHARE;
  return {
    ...{ left, width, height, mostKg },
    place: ({ balancePointM, cargoKg }) => `${at(balancePointM * 100)} ${at((-cargoKg / mostKg) * height)}`,
  };
}

/** Most edges are curves in weight over place: enough points that the eye sees none. An upright edge has its two ends. */
function pointsAlong(edge: Edge): readonly EnvelopePoint[] {
  const STEPS = 12;
  const { from, to } = edge;
  const wide = to.balancePointM - from.balancePointM;
  if (edge.boundary === null || Math.abs(wide) < 0.01) return [from, to];
  const between = Array.from({ length: STEPS - 1 }, (_, step) => {
    const balancePointM = metres(from.balancePointM + (wide * (step + 1)) / STEPS);
    const cargoKg = weightOnEdge(edge, balancePointM);
    return cargoKg === null ? [] : [{ balancePointM, cargoKg }];
  });
  return [from, ...between.flat(), to];
}

/** One limit that makes two edges side by side, as torsion axles held soft and stiff do, is one edge to the eye. */
function merged(edges: readonly Edge[]): readonly Edge[] {
  const found: Edge[] = [];
  for (const edge of edges) {
    const last = found.at(-1);
    const isSame = last !== undefined && last.kind === edge.kind && last.subject === edge.subject;
    if (isSame) found[found.length - 1] = { ...last, to: edge.to };
    else found.push(edge);
  }
  return found;
}

const WEIGHT_STEPS_LB = [250, 500, 1_000, 2_000, 2_500, 5_000, 10_000, 20_000];

function Grid({ plot }: { readonly plot: Plot }) {
  const { left, width, height, mostKg } = plot;
  const stepLb = WEIGHT_STEPS_LB.find((step) => toLb(kg(mostKg)) / step <= 6) ?? 50_000;
  const weights = Array.from({ length: Math.floor(toLb(kg(mostKg)) / stepLb) + 1 }, (_, index) => index * stepLb);
  const FOOT = 30.48;
  const stepFt = width / FOOT > 24 ? 5 : width / FOOT > 10 ? 2 : 1;
  const firstFt = Math.ceil(left / FOOT / stepFt) * stepFt;
  const feet = Array.from(
    { length: Math.floor((left + width) / FOOT / stepFt) - firstFt / stepFt + 1 },
    (_, index) => firstFt + index * stepFt,
  );
  return (
    <>
      {weights.map((pounds) => {
        const y = at((-lb(pounds) / mostKg) * height);
        return (
          <>
            <path class="p-grid" d={`M${at(left)} ${y}h${at(width)}`} />
            <text class="p-tick" x={at(left - 6)} y={y + 6} text-anchor="end">
              {showNumber(pounds / 1_000, 2)}
            </text>
          </>
        );
      })}
      {feet.map((foot) => (
        <>
          <path class="p-grid" d={`M${at(foot * FOOT)} 0v${at(-height)}`} />
          <text class="p-tick" x={at(foot * FOOT)} y="28" text-anchor="middle">
            {foot}
          </text>
        </>
      ))}
      <text class="p-tick" x={at(left + width)} y="54" text-anchor="end">
        ft behind the coupler
      </text>
      <text class="p-tick" x={at(left - 70)} y={at(-height - 10)}>
        1,000 lb
      </text>
    </>
  );
}

function EdgeMark({ edge, number, plot }: { readonly edge: Edge; readonly number: number; readonly plot: Plot }) {
  const along = pointsAlong(edge);
  const middle = along[Math.floor(along.length / 2)] ?? edge.from;
  const [x = '0', y = '0'] = plot.place(along.length > 2 ? middle : half(edge.from, edge.to)).split(' ');
  return (
    <>
      <circle class="p-edge" cx={x} cy={y} r="15" />
      <text class="p-edge-no" x={x} y={at(Number(y) + 6)} text-anchor="middle">
        {number}
      </text>
    </>
  );
}

function half(a: EnvelopePoint, b: EnvelopePoint): EnvelopePoint {
  return {
    balancePointM: metres((a.balancePointM + b.balancePointM) / 2),
    cargoKg: kg((a.cargoKg + b.cargoKg) / 2),
  };
}

function Point({
  point,
  isInside,
  plot,
}: {
  readonly point: EnvelopePoint;
  readonly isInside: boolean;
  readonly plot: Plot;
}) {
  const [x = '0', y = '0'] = plot.place(point).split(' ');
  return isInside ? (
    <circle class="p-point" cx={x} cy={y} r="12" />
  ) : (
    <path class="p-point p-out" d={`M${x} ${y}m-13 -13l26 26m0 -26l-26 26`} />
  );
}

interface EdgeWordsProps {
  readonly edges: readonly Edge[];
  readonly point: EnvelopePoint | null;
  readonly isInside: boolean;
  readonly unchecked: number;
}

function EdgeWords({ edges, point, isInside, unchecked }: EdgeWordsProps) {
  return (
    <>
      <p>
        {point === null
          ? 'Where this load stands is not known.'
          : `${isInside ? 'Inside' : 'Outside'}: ${showMass(point.cargoKg)} on the deck, balancing ${behindWords(point.balancePointM)}.`}
        {unchecked > 0 && ' Ratings nobody has entered make no edge.'}
      </p>
      <ol class="edges">
        {edges.map((edge) => (
          <li key={`${edge.kind} ${edge.subject}`}>{edgeLine(edge)}</li>
        ))}
      </ol>
    </>
  );
}
