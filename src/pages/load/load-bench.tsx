import type { ComponentChildren } from 'preact';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import type { LoadAnswer } from '../../rules/fit/load-answer.js';
import type { Metres } from '../../rules/units/length.js';
import { Caution } from '../components/caution.js';
import { Place, Reasons, Remedies } from '../components/fit-answer.js';
import { LoadTable } from '../components/load-table.js';
import { VerdictMark } from '../components/marks.js';
import { EnvelopePicture } from '../pictures/envelope-picture.js';
import { SideView } from '../pictures/side-view.js';
import { verdictSentence } from '../words/fit-words.js';
import type { Names } from '../words/flag-words.js';
import { behindWords } from '../words/picture-words.js';
import type { AnsweredLoad } from './asked-load.js';
import { Gauges } from './gauges.js';

interface BenchProps {
  readonly yardNumber: string;
  readonly answered: AnsweredLoad;
  readonly today: CivilDate;
  /** What a script adds below the picture: the slider and its buttons. */
  readonly slider?: ComponentChildren;
}

/** The answer of a load check: verdict, the trailer with its load, every limit, the envelope, and what would make it yes. */
export function LoadBench({ yardNumber, answered, today, slider }: BenchProps) {
  const { answer, asked, placeM, bestLoadM } = answered;
  const { build, envelope, point, loadCheck } = answer;
  const names = namesOf(answered);
  // A ticket says what stands on the scale; the best place is worked out from the build, and the two need not agree.
  const parking = asked.scale === null ? answer.parking : null;
  return (
    <div class="stack">
      <div class="row bench-verdict" role="status">
        <VerdictMark verdict={answer.verdict} big />
        <p class="strong">{sentence(answer)}</p>
      </div>
      {build !== null && (
        <SideView
          build={build}
          yardNumber={yardNumber}
          load={
            placeM === null
              ? null
              : {
                  name: asked.name,
                  machine: answered.machine,
                  massKg: asked.massKg,
                  balancePointM: placeM,
                  tongueN: loadCheck.tongueN,
                  axleN: loadCheck.axleN,
                  bestM: parking?.balancePointM ?? null,
                }
          }
        />
      )}
      <div class="bench-slider">{slider ?? <Stands answered={answered} />}</div>
      <Gauges answer={answer} />
      <div class="two">
        <section class="stack-tight" aria-labelledby="envelope">
          <h3 id="envelope">Where it may stand, and how heavy</h3>
          <EnvelopePicture
            envelope={envelope}
            yardNumber={yardNumber}
            point={point}
            isInside={isInside(answered)}
            bestM={parking === null ? null : bestLoadM}
          />
        </section>
        <div class="stack">
          {answer.remedies.length > 0 && (
            <section class="stack-tight" aria-label="What would make it yes">
              <h3>What would make it yes</h3>
              <Remedies fit={answer} names={names} />
            </section>
          )}
          {parking !== null && (
            <section class="stack-tight" aria-label="Where to park it">
              <h3>Where to park it</h3>
              <Place parking={parking} names={names} />
            </section>
          )}
          {answer.reasons.length > 0 && (
            <section class="stack-tight" aria-label="Why">
              <h3>Why</h3>
              <Reasons fit={answer} names={names} today={today} />
            </section>
          )}
        </div>
      </div>
      <details class="fold">
        <summary>
          <span class="strong">The whole sum</span>
        </summary>
        <LoadTable check={loadCheck} />
      </details>
      <Caution />
    </div>
  );
}

function sentence(answer: LoadAnswer): string {
  return answer.isMoved && answer.verdict === 'weigh-first'
    ? 'Moved since the ticket, so worked out and not weighed: weigh it again.'
    : verdictSentence(answer);
}

/** Where it stands, in words; a script puts a slider here. */
function Stands({ answered }: { readonly answered: AnsweredLoad }) {
  return <p>{standsWords(answered, answered.placeM)}</p>;
}

export function standsWords(
  { asked, placedBy }: Pick<AnsweredLoad, 'asked' | 'placedBy'>,
  placeM: Metres | null,
): string {
  if (placeM === null) return 'Where it stands is not known: type it below.';
  const how =
    placedBy === 'best'
      ? ', its best place, since none was typed'
      : placedBy === 'middle'
        ? ', drawn in the middle'
        : '';
  const moved = asked.scale !== null && (asked.movedForwardM ?? 0) !== 0 ? ', moved since the ticket' : '';
  return `Balances ${behindWords(placeM)}${how}${moved}.`;
}

/** Inside every edge of the envelope: no limit passed and the tongue in its band. */
function isInside({ answer: { loadCheck } }: AnsweredLoad): boolean {
  return (
    loadCheck.comparisons.every(({ standing }) => standing !== 'over') &&
    loadCheck.tongueBand.standing !== 'low' &&
    loadCheck.tongueBand.standing !== 'high'
  );
}

function namesOf({ machine, asked }: AnsweredLoad): Names {
  return { machines: new Map([[machine.id, asked.name]]), checkKinds: new Map() };
}
