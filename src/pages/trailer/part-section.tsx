import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { wholeMonthsBetween } from '../../rules/calendar/civil-date.js';
import type { BearingNumbers, Part } from '../../rules/facts/part.js';
import { tireAge } from '../../rules/tire/tire-age.js';
import { type Caller, may } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { PhoneFold } from '../components/fold.js';
import { showDate, showMass, showPressure } from '../components/show-quantity.js';
import { Table } from '../components/table.js';
import { PART_WORDS, positionWords } from '../words/build-words.js';

interface SectionProps {
  readonly caller: Caller;
  readonly screen: TrailerScreen;
}

/** Parts on the trailer now, each with its age. */
export function PartSection({ caller, screen }: SectionProps) {
  const { today } = caller;
  const path = `/trailers/${screen.trailer.id}`;
  const fitted = screen.facts.parts
    .filter((part) => part.removedOn === null || part.removedOn > today)
    .toSorted(inOrder);
  const off = screen.facts.parts.length - fitted.length;
  const mayChange = may(caller, 'shop') && screen.trailer.status === 'in-service';
  return (
    <section class="stack-tight" aria-labelledby="parts">
      <h2 class="chalked" id="parts">
        Parts
      </h2>
      {fitted.length === 0 ? (
        <p class="empty">No part is on file. Fit the tires first: their codes give their age.</p>
      ) : (
        <PhoneFold summary={`${fitted.length} on the trailer, with ages`}>
          <Table
            caption={`${fitted.length} on the trailer${off > 0 ? `; ${off} taken off, in the history` : ''}`}
            rows={fitted}
            rowKey={(part) => part.id}
            columns={[
              { label: 'Part', lead: true, cell: partName },
              { label: 'Marks', cell: (part) => marks(part) ?? <span class="unknown">not known</span> },
              { label: 'Age', cell: (part) => age(part, today) ?? <span class="unknown">not known</span> },
              {
                label: 'Fitted',
                cell: (part) => (part.fittedOn ? showDate(part.fittedOn) : <span class="unknown">not known</span>),
              },
              ...(mayChange
                ? [
                    {
                      label: 'Change',
                      cell: (part: Part) => (
                        <a href={`${path}/parts/${part.id}/remove`}>
                          Take off<span class="hidden-words">: {partName(part)}</span>
                        </a>
                      ),
                    },
                  ]
                : []),
            ]}
          />
        </PhoneFold>
      )}
      {mayChange && (
        <p class="actions">
          <a class="button" href={`${path}/parts/new`}>
            Fit a part
          </a>
        </p>
      )}
    </section>
  );
}

export function partName(part: Part): string {
  return part.position === null ? PART_WORDS[part.kind] : `${PART_WORDS[part.kind]}, ${positionWords(part.position)}`;
}

function marks(part: Part): string | null {
  const { tire, bearings } = part;
  if (part.kind === 'hub-bearings') return bearings && bearingWords(bearings);
  if (tire === null) return part.kind === 'tire' ? null : '–';
  const texts = [
    tire.size,
    tire.loadRange && `load range ${tire.loadRange}`,
    tire.maxLoadSingleKg !== null ? `carries ${showMass(tire.maxLoadSingleKg)}` : null,
    tire.maxColdPressureKpa !== null ? `at ${showPressure(tire.maxColdPressureKpa)}` : null,
    tire.loadIndexSingle !== null ? `load index ${tire.loadIndexSingle}` : null,
    tire.speedSymbol && `speed symbol ${tire.speedSymbol}`,
    tire.dateCode && `code ${tire.dateCode}`,
  ].filter((text) => text !== null);
  return texts.length === 0 ? null : texts.join(', ');
}

/** `inner 25580, outer L44649`. */
function bearingWords({ inner, outer }: BearingNumbers): string {
  return [inner && `inner ${inner}`, outer && `outer ${outer}`].filter(Boolean).join(', ');
}

/** A tire's age runs from its date code; any other part's from the day it was fitted. */
function age(part: Part, today: CivilDate): string | null {
  if (part.kind === 'tire') {
    const found = part.tire?.dateCode ? tireAge(part.tire.dateCode, today) : null;
    return found && `${found.years} y ${found.months} mo`;
  }
  if (part.fittedOn === null) return null;
  const months = wholeMonthsBetween(part.fittedOn, today);
  return `${Math.floor(months / 12)} y ${months % 12} mo`;
}

function inOrder(a: Part, b: Part): number {
  return `${a.kind === 'tire' ? 0 : 1}${a.kind}${a.position ?? ''}` <
    `${b.kind === 'tire' ? 0 : 1}${b.kind}${b.position ?? ''}`
    ? -1
    : 1;
}
