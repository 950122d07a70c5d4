import { Injectable } from '@nestjs/common';
import { Database } from '../../store/database.js';

/** Whether the service keeps any yard yet. */
@Injectable()
export class AnyYard {
  constructor(private readonly database: Database) {}

  async run(): Promise<boolean> {
    return (await this.database.yardIds()).length > 0;
  }
}
