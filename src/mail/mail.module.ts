import { join } from 'node:path';
import { Inject, Module, type OnModuleDestroy } from '@nestjs/common';
import { Config } from '../config.js';
import { FolderMailer } from './folder-mailer.js';
import { Letterhead } from './letterhead.js';
import { Mailer } from './mailer.js';
import { SmtpMailer } from './smtp-mailer.js';

/** The one mailer of the service: SMTP where a server is set, a folder in the data directory where none is. */
@Module({
  providers: [
    {
      provide: Letterhead,
      inject: [Config],
      useFactory: (config: Config) => Letterhead.of(config.baseUrl, config.mailFrom),
    },
    {
      provide: Mailer,
      inject: [Config, Letterhead],
      useFactory: (config: Config, letterhead: Letterhead): Mailer =>
        config.smtpUrl === null
          ? new FolderMailer(join(config.dataDir, 'mail'), letterhead.fromAddress)
          : new SmtpMailer(config.smtpUrl, letterhead.fromAddress),
    },
  ],
  exports: [Letterhead, Mailer],
})
export class MailModule implements OnModuleDestroy {
  constructor(@Inject(Mailer) private readonly mailer: Mailer) {}

  async onModuleDestroy(): Promise<void> {
    await this.mailer.close();
  }
}
