import { Module } from '@nestjs/common';
import { HttpModule } from '../http/http.module.js';
import { UseCasesModule } from '../use-cases/use-cases.module.js';
import { AssetController } from './assets/asset.controller.js';
import { FirstRunController } from './first-run/first-run.controller.js';
import { PeopleController } from './people/people.controller.js';
import { PersonController } from './people/person.controller.js';
import { InvitationController } from './sign-in/invitation.controller.js';
import { PasswordController } from './sign-in/password.controller.js';
import { SignInController } from './sign-in/sign-in.controller.js';

@Module({
  imports: [HttpModule, UseCasesModule],
  controllers: [
    AssetController,
    FirstRunController,
    InvitationController,
    PasswordController,
    PeopleController,
    PersonController,
    SignInController,
  ],
})
export class PagesModule {}
