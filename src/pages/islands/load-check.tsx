import { startIsland } from './browser/start-island.js';

startIsland('load-check', (place) => place.classList.add('awake'));
