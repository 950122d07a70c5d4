import type { Caller } from '../../src/use-cases/caller.js';
import type { DemoPerson } from './people.js';

/** The demo yard as the first start makes it: people and the usual checks, and nothing else. */
export interface DemoToFill {
  /** The demo yard's owner, through the door `seed`. */
  readonly caller: Caller;
  readonly personIdOf: Readonly<Record<DemoPerson['key'], string>>;
}
