import { type Caller, may } from '../../use-cases/caller.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { PhoneFold } from '../components/fold.js';
import { Fact } from '../components/load-table.js';
import { showCount, showDate } from '../components/show-quantity.js';
import { buildGroups } from '../words/build-lines.js';

interface SectionProps {
  readonly caller: Caller;
  readonly screen: TrailerScreen;
}

export function BuildSection({ caller, screen }: SectionProps) {
  const { build } = screen;
  const versions = screen.facts.builds.length;
  return (
    <section class="stack-tight" aria-labelledby="build">
      <h2 class="chalked" id="build">
        Build sheet
      </h2>
      {build === null ? (
        <p class="empty">No build sheet yet. Without it no limit can be worked out.</p>
      ) : (
        <>
          <p class="soft small">
            In force from {showDate(build.effectiveFrom)}
            {versions > 1 &&
              `; ${showCount(versions, 'version')} on file, and each trip is judged by the build of its day`}
            .
          </p>
          <PhoneFold summary="All of it">
            <div class="cards">
              {buildGroups(build).map((group) => (
                <section class="sheet" key={group.title} aria-label={group.title}>
                  <h3>{group.title}</h3>
                  <dl class="facts facts-two">
                    {group.lines.map((line) => (
                      <Fact key={line.name} name={line.name} value={line.value} />
                    ))}
                  </dl>
                </section>
              ))}
            </div>
          </PhoneFold>
        </>
      )}
      {may(caller, 'shop') && screen.trailer.status === 'in-service' && (
        <p class="actions">
          <a class="button" href={`/trailers/${screen.trailer.id}/build`}>
            {build === null ? 'Enter the build sheet' : 'Change or mend the build sheet'}
          </a>
        </p>
      )}
    </section>
  );
}
