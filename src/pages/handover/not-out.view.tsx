import type { Caller } from '../../use-cases/caller.js';
import type { HandoverFormScreen } from '../../use-cases/show/show-handover-form.js';
import { YardNumber } from '../components/yard-number.js';
import { Head, Page } from '../page.js';

/** Asked to take back what nobody handed out. */
export function NotOutPage({ caller, screen }: { readonly caller: Caller; readonly screen: HandoverFormScreen }) {
  const { trailer } = screen;
  return (
    <Page title={`Take it back, ${trailer.yardNumber}`} caller={caller} door="Trailers" at="below">
      <Head
        title={
          <span class="row">
            <YardNumber number={trailer.yardNumber} id={trailer.id} /> Take it back
          </span>
        }
        lede="Nobody wrote down that it went out, so there is nothing to hold it against."
      />
      <div class="actions">
        <a class="button button-main" href={`/trailers/${trailer.id}/checks`}>
          Record a check instead
        </a>
        <a class="button" href={`/trailers/${trailer.id}/hand-out`}>
          Hand it out
        </a>
      </div>
    </Page>
  );
}
