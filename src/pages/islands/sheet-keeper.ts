import type { SheetKeeperData } from '../sheets/sheet-data.js';
import { keepPages, wipeOnSignOut } from './browser/keep-pages.js';
import { startIsland } from './browser/start-island.js';

startIsland<SheetKeeperData>('sheet-keeper', (_place, { person, paths }) => {
  wipeOnSignOut(person);
  void keepPages([location.pathname, ...paths]);
});
