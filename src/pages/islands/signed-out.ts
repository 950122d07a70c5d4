import { wipePages } from './browser/keep-pages.js';

// Who signs in next on this phone must not find the pages of who was here before.
void wipePages();
