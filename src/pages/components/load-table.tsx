import type { Comparison } from '../../rules/load/limit.js';
import type { LoadCheck } from '../../rules/load/load-check.js';
import { newtons } from '../../rules/units/force.js';
import { metres } from '../../rules/units/length.js';
import { limitWords, originWords } from '../words/limit-words.js';
import { lacksWords, stopsWords } from '../words/unknown-words.js';
import { showForce, showLength, showMass, showShare } from './show-quantity.js';
import { Table } from './table.js';

const STANDING_WORDS: Readonly<Record<Comparison['standing'], string>> = {
  inside: 'Inside',
  near: 'Inside, too near to trust unweighed',
  over: 'Over',
};

const METHOD_WORDS: Readonly<Record<NonNullable<LoadCheck['method']>, string>> = {
  scale: 'Tongue and axle loads are from a scale ticket.',
  statics: 'Tongue and axle loads are worked out from where the load sits and how level the trailer rides.',
  range: 'How torsion axles share is not known to one number: each is taken at the most it may carry.',
  bound: 'Where the load sits is not known: the axles are taken to carry what the tongue is not known to carry.',
};

/** One load against every limit, with what is known of the sum itself. */
export function LoadTable({ check }: { readonly check: LoadCheck }) {
  return (
    <div class="stack">
      <dl class="facts">
        <Fact name="Trailer and load together" value={check.grossKg === null ? null : showMass(check.grossKg)} />
        <Fact name="On the deck" value={check.cargoKg === null ? null : showMass(check.cargoKg)} />
        <Fact
          name="On the tongue"
          value={
            check.tongueN === null
              ? null
              : `${showForce(check.tongueN)}${check.tongueShare === null ? '' : ` (${showShare(check.tongueShare)})`}`
          }
        />
        <Fact name="On the axles" value={check.axleGroupN === null ? null : showForce(check.axleGroupN)} />
        {eachAxle(check) !== null && <Fact name="On each axle, from the front" value={eachAxle(check)} />}
        {check.sideN !== null && <Fact name="Left and right of each" value={check.sideN.map(sides).join('; ')} />}
        {check.attitude !== null && <Fact name="How it rides" value={attitudeWords(check.attitude)} />}
      </dl>
      {check.comparisons.length > 0 && (
        <Table
          caption={check.method === null ? 'Each limit that could be checked.' : METHOD_WORDS[check.method]}
          rows={check.comparisons}
          rowKey={(row) => `${row.limit.kind} ${row.limit.subject}`}
          columns={[
            { label: 'Limit', lead: true, cell: (row) => limitWords(row.limit) },
            { label: 'Load', right: true, cell: (row) => showForce(row.loadN) },
            { label: 'Rated', right: true, cell: (row) => showForce(row.limit.limitN) },
            {
              label: 'Left',
              right: true,
              cell: (row) =>
                row.marginN < 0 ? `over by ${showForce(newtons(-row.marginN))}` : `${showForce(row.marginN)}`,
            },
            { label: 'Standing', cell: (row) => <Standing standing={row.standing} /> },
            {
              label: 'From',
              cell: (row) => (
                <span class="small soft">
                  {originWords(row.limit.origin)}; {row.measured ? 'weighed' : 'not all weighed'}
                </span>
              ),
            },
          ]}
        />
      )}
      {check.unknowns.length > 0 && (
        <ul class="plain soft">
          {check.unknowns.map((unknown) => (
            <li key={`${unknown.lacks} ${unknown.stops}`}>
              {lacksWords(unknown.lacks)} is not known, so {stopsWords(unknown.stops)}.
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** One number an axle, or between which two it lies; null where nothing tells them apart. */
function eachAxle({ axleN, axleRangeN }: LoadCheck): string | null {
  if (axleN !== null) return axleN.length > 1 ? axleN.map(showForce).join('; ') : null;
  return axleRangeN?.map(({ leastN, mostN }) => `${showForce(leastN)} to ${showForce(mostN)}`).join('; ') ?? null;
}

function sides({ leftN, rightN }: NonNullable<LoadCheck['sideN']>[number]): string {
  return `${showForce(leftN)} left, ${showForce(rightN)} right`;
}

function attitudeWords({ standing, raisedM }: NonNullable<LoadCheck['attitude']>): string {
  if (standing === 'level') return 'Level, by the heights entered';
  return `${showLength(metres(Math.abs(raisedM)))} ${standing === 'nose-high' ? 'nose high' : 'nose low'}`;
}

function Standing({ standing }: { readonly standing: Comparison['standing'] }) {
  return <span class={`standing standing-${standing}`}>{STANDING_WORDS[standing]}</span>;
}

export function Fact({ name, value }: { readonly name: string; readonly value: string | null }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{value === null ? <span class="unknown">unknown</span> : value}</dd>
    </div>
  );
}
