import { type Caller, may } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { DueMark } from '../components/due-line.js';
import { dueWhen, dueWhy, workWords, yardDayWords } from '../words/due-words.js';

interface SectionProps {
  readonly caller: Caller;
  readonly screen: TrailerScreen;
}

export function DueSection({ caller, screen }: SectionProps) {
  const kinds = new Map(screen.facts.checkKinds.map((kind) => [kind.id, kind]));
  const { due } = screen.assessment;
  return (
    <section class="stack-tight" aria-labelledby="due">
      <h2 class="chalked" id="due">
        Due
      </h2>
      {due.length === 0 && <p class="empty">No check applies to this trailer.</p>}
      <ul class="lines sheet">
        {due.map((one) => {
          const kind = kinds.get(one.checkKindId);
          const yardDays = one.state === 'later' ? null : yardDayWords(one, caller.today);
          const why = dueWhy(one);
          return (
            <li class="stack-tight" key={one.checkKindId}>
              <div class="due-line">
                <span class="strong">{kind?.name ?? one.code}</span>
                <DueMark due={one} safety={kind?.safety ?? false} />
              </div>
              <p>{dueWhen(one, caller.today)}.</p>
              <details class="more">
                <summary>
                  Why, and what it takes<span class="hidden-words">: {kind?.name ?? one.code}</span>
                </summary>
                <div class="stack-tight small">
                  {why && <p>{why}</p>}
                  {kind && <p>{workWords(kind)}.</p>}
                  {yardDays && <p>{yardDays}.</p>}
                  {kind && <p class="soft">Interval from: {kind.source}</p>}
                </div>
              </details>
              {may(caller, 'hand') && screen.trailer.status === 'in-service' && (
                <p class="no-print">
                  <a href={`/trailers/${screen.trailer.id}/checks/${one.checkKindId}`}>
                    Record it<span class="hidden-words">: {kind?.name ?? one.code}</span>
                  </a>
                </p>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
