import { Injectable } from '@nestjs/common';
import { Config } from '../../config.js';
import { Database } from '../../store/database.js';
import { YardStore } from '../../store/yard-store.js';

/**
 * Whether somebody may set up a yard of their own. Anyone may as long as there is none besides the demo: that is how a
 * new service gets its first. Later the owners of a yard may set up another; everybody else is invited into one.
 * With sign-up `open` anyone may at any time.
 */
@Injectable()
export class MayFoundYard {
  constructor(
    private readonly config: Config,
    private readonly database: Database,
    private readonly yards: YardStore,
  ) {}

  async run({ personId }: { readonly personId: string | null }): Promise<boolean> {
    if (this.config.signUp === 'open') return true;
    if (personId !== null) {
      const mine = await this.database.yardsOfPerson(personId);
      if (mine.some((yard) => yard.role === 'owner' && yard.leftOn === null)) return true;
    }
    for (const yardId of await this.database.yardIds()) {
      const { demo } = await this.database.inYard(yardId, (tx) => this.yards.get(tx));
      if (!demo) return false;
    }
    return true;
  }
}
