import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';
import { done, notFound, type Outcome } from '../outcome.js';

/** Says whether a person may work in another yard. One they never belonged to reads like one that does not exist. */
@Injectable()
export class SwitchYard {
  constructor(private readonly database: Database) {}

  async run(input: {
    readonly personId: string;
    readonly yardId: string;
  }): Promise<Outcome<{ readonly yardId: string }>> {
    const yards = await this.database.yardsOfPerson(input.personId);
    const yard = yards.find(({ yardId, leftOn }) => yardId === input.yardId && leftOn === null);
    return yard === undefined ? notFound('yard') : done({ yardId: yard.yardId });
  }
}
