import type { HubLife } from '../../rules/history/hub-lives.js';
import type { TrailerScreen } from '../../use-cases/show/show-trailer.js';
import { HowWorkedOut } from '../components/how-worked-out.js';
import { hubWords } from '../words/hub-words.js';

/** How hard each hub works, where its bearings are on record. Never a date: the repack has its own. */
export function HubSection({ screen }: { readonly screen: TrailerScreen }) {
  const { hubLives } = screen.assessment;
  if (hubLives.length === 0) return null;
  return (
    <section class="stack-tight" aria-labelledby="hubs">
      <h2 class="chalked" id="hubs">
        Hub bearings
      </h2>
      <p class="small">{hubWords(hardest(hubLives))}</p>
      {hubLives.length > 1 && (
        <details class="more">
          <summary>All {hubLives.length} hubs</summary>
          <ul class="small">
            {hubLives.map((hub) => (
              <li key={hub.partId}>{hubWords(hub)}</li>
            ))}
          </ul>
        </details>
      )}
      <details class="more">
        <summary>What is taken for granted</summary>
        <p class="small">
          Rating life L10 (ISO 281): the distance that nine in ten such bearings pass. Hub load is half the axle’s, with
          20 % for rough service; the inner bearing is taken to carry 70 % of it and the outer 50 %, since nobody knows
          which has more. Both are the heavy end, so the share used is at most this.
        </p>
      </details>
      <HowWorkedOut workings={screen.workings.filter(({ of }) => of === 'hub-life')} what="hub bearings" />
      <p class="small">
        It tells which hub works hardest, not when to repack: hubs fail by water, old grease and wrong preload long
        before. It is arithmetic on what was entered.
      </p>
    </section>
  );
}

function hardest(hubs: readonly HubLife[]): HubLife {
  return hubs.reduce((most, hub) => ((hub.lifeUsed ?? -1) > (most.lifeUsed ?? -1) ? hub : most));
}
