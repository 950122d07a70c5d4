import { render } from 'preact';
import type { SheetsData } from '../sheets/sheet-data.js';
import { keepPages, wipeOnSignOut } from './browser/keep-pages.js';
import { PhoneSheets } from './browser/phone-sheets.js';
import { startIsland } from './browser/start-island.js';

startIsland<SheetsData>('sheets', (place, { person }) => {
  wipeOnSignOut(person);
  void keepPages(['/sheets']);
  place.replaceChildren();
  render(
    <>
      {location.pathname !== '/sheets' && (
        <p class="caution" role="note">
          There is no signal, and this sheet was not opened on this phone before. Those below can be.
        </p>
      )}
      <PhoneSheets person={person} />
    </>,
    place,
  );
});
