import type { Caller } from '../../use-cases/caller.js';
import { Island } from '../components/island.js';
import { Head, Page } from '../page.js';
import { personMark } from './person-mark.js';
import type { SheetsData } from './sheet-data.js';

/** What lies on this phone: sheets being filled in, sheets waiting to be sent, and what became of those that went. */
export function SheetsPage({ caller }: { readonly caller: Caller }) {
  const data: SheetsData = { person: personMark(caller) };
  return (
    <Page title="Sheets on this phone" caller={caller} door="Trailers" at="below">
      <Head
        title="Sheets on this phone"
        lede="Filled in without a signal, they are kept here and sent by themselves, each once."
      />
      <Island name="sheets" data={data}>
        <p class="empty">
          Keeping sheets on the phone needs script, which is off or has not come. Sheets still work with a signal: pick
          a trailer under <a href="/trailers">Trailers</a>.
        </p>
      </Island>
    </Page>
  );
}
