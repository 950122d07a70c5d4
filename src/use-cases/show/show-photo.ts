import { Injectable } from '@nestjs/common';
import { CheckStore, type Photo } from '../../store/check-store.js';
import { Database } from '../../store/database.js';
import { HandoverStore } from '../../store/handover-store.js';
import type { Caller } from '../caller.js';
import { done, notFound, type Outcome } from '../outcome.js';

/** One photo of a check or of a handover. */
@Injectable()
export class ShowPhoto {
  constructor(
    private readonly database: Database,
    private readonly checks: CheckStore,
    private readonly handovers: HandoverStore,
  ) {}

  async run(caller: Caller, input: { readonly photoId: string }): Promise<Outcome<Photo>> {
    const photo = await this.database.inYard(
      caller.yardId,
      async (tx) =>
        (await this.checks.findPhoto(tx, input.photoId)) ?? (await this.handovers.findPhoto(tx, input.photoId)),
    );
    return photo === null ? notFound('photo') : done(photo);
  }
}
