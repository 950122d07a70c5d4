import type { Due } from '../../rules/inspection/due.js';
import { type Caller, may } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { DueMark } from '../components/due-line.js';
import { HowWorkedOut } from '../components/how-worked-out.js';
import { showCount } from '../components/show-quantity.js';
import { sheetPath } from '../sheets/sheet-data.js';
import { dueWhen, dueWhy, rangeWords, stopWords, workWords, yardDayWords } from '../words/due-words.js';

interface SectionProps {
  readonly caller: Caller;
  readonly screen: TrailerScreen;
}

export function DueSection({ caller, screen }: SectionProps) {
  const { due } = screen.assessment;
  const pressing = due.filter((one) => one.state !== 'later');
  const rest = due.filter((one) => one.state === 'later');
  return (
    <section class="stack-tight" aria-labelledby="due">
      <h2 class="chalked" id="due">
        Due
      </h2>
      {due.length === 0 && <p class="empty">No check applies to this trailer.</p>}
      {pressing.length > 0 && (
        <ul class="lines sheet">
          {pressing.map((one) => (
            <DueItem key={one.checkKindId} due={one} caller={caller} screen={screen} />
          ))}
        </ul>
      )}
      {due.length > 0 && pressing.length === 0 && <p class="empty">Nothing is due soon.</p>}
      {rest.length > 0 && (
        <details class="fold">
          <summary class="strong">{showCount(rest.length, 'check')} later</summary>
          <ul class="lines sheet">
            {rest.map((one) => (
              <DueItem key={one.checkKindId} due={one} caller={caller} screen={screen} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function DueItem({ due: one, caller, screen }: SectionProps & { readonly due: Due }) {
  const kind = screen.facts.checkKinds.find(({ id }) => id === one.checkKindId);
  const yardDays = one.state === 'later' ? null : yardDayWords(one, caller.today);
  const why = dueWhy(one);
  const range = rangeWords(one);
  const stops = stopWords(one);
  return (
    <li class="stack-tight">
      <div class="due-line">
        <span class="strong">{kind?.name ?? one.code}</span>
        <DueMark due={one} safety={kind?.safety ?? false} />
      </div>
      <p>{dueWhen(one, caller.today)}.</p>
      {stops && <p>{stops}.</p>}
      <details class="more">
        <summary>
          Why, and what it takes<span class="hidden-words">: {kind?.name ?? one.code}</span>
        </summary>
        <div class="stack-tight small">
          {why && <p>{why}</p>}
          {range && <p>{range}.</p>}
          {kind && <p>{workWords(kind)}.</p>}
          {yardDays && <p>{yardDays}.</p>}
          {kind && <p class="soft">Interval from: {kind.source}</p>}
        </div>
      </details>
      <HowWorkedOut
        workings={screen.workings.filter(({ of, subject }) => of === 'due' && subject === one.checkKindId)}
        what={kind?.name ?? one.code}
      />
      {may(caller, 'hand') && screen.trailer.status === 'in-service' && (
        <p class="no-print">
          <a href={sheetPath(screen.trailer.id, one.checkKindId)}>
            Record it<span class="hidden-words">: {kind?.name ?? one.code}</span>
          </a>
        </p>
      )}
    </li>
  );
}
