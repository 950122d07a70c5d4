import { Controller, Get, Header } from '@nestjs/common';
import { Open } from './open.js';

@Controller()
export class HealthController {
  /** Says that the service answers; asks nothing of the database, so that a slow query does not get it restarted. */
  @Open()
  @Get('health')
  @Header('cache-control', 'no-store')
  health(): { status: 'ok' } {
    return { status: 'ok' };
  }
}
