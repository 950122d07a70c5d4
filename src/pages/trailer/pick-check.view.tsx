import type { CheckKind } from '../../rules/facts/check.js';
import { applies } from '../../rules/inspection/applies.js';
import type { Caller } from '../../use-cases/caller.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { Island } from '../components/island.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';
import { personMark } from '../sheets/person-mark.js';
import { type SheetKeeperData, sheetPath } from '../sheets/sheet-data.js';
import { listWords } from '../words/build-words.js';
import { triggerWords } from '../words/due-words.js';

interface PickCheckProps {
  readonly caller: Caller;
  readonly screen: TrailerFormScreen;
}

/** Which check was done? Those of this build first. */
export function PickCheckPage({ caller, screen }: PickCheckProps) {
  const { trailer, facts, build } = screen;
  const fitting = facts.checkKinds.filter((kind) => applies(kind.appliesTo, build));
  const others = facts.checkKinds.filter((kind) => !fitting.includes(kind));
  return (
    <Page title={`Record a check, ${trailer.yardNumber}`} caller={caller} door="Trailers" at="below">
      <Head
        title={
          <span class="row">
            <YardNumber number={trailer.yardNumber} id={trailer.id} /> Record a check
          </span>
        }
        lede="Pick what was done."
      />
      {fitting.length === 0 && (
        <p class="empty">No check is set up for this build. An owner sets them up under Yard.</p>
      )}
      <Kinds kinds={fitting} trailerId={trailer.id} />
      <Island name="sheet-keeper" data={sheetKeeper(caller, fitting, trailer.id)}>
        <p class="soft small">
          A sheet opened with a signal can be filled in without one. <a href="/sheets">What waits on this phone</a>
        </p>
      </Island>
      {others.length > 0 && (
        <details class="more">
          <summary>Checks that this build does not call for ({others.length})</summary>
          <Kinds kinds={others} trailerId={trailer.id} />
        </details>
      )}
    </Page>
  );
}

/** The sheets a phone keeps once this list was opened, so that each opens without a signal. */
function sheetKeeper(caller: Caller, kinds: readonly CheckKind[], trailerId: string): SheetKeeperData {
  return { person: personMark(caller), paths: ['/sheets', ...kinds.map((kind) => sheetPath(trailerId, kind.id))] };
}

function Kinds({ kinds, trailerId }: { readonly kinds: readonly CheckKind[]; readonly trailerId: string }) {
  return (
    <ul class="cards">
      {kinds.map((kind) => (
        <li class="sheet" key={kind.id}>
          <h2 class="h3">
            <a href={sheetPath(trailerId, kind.id)}>{kind.name}</a>
          </h2>
          <p class="soft small">
            {kind.triggers.length === 0 ? 'When asked for' : listWords(kind.triggers.map(triggerWords))}
            {kind.safety && '. Keeps people safe'}
          </p>
        </li>
      ))}
    </ul>
  );
}
