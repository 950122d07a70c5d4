import { Module } from '@nestjs/common';
import { MailModule } from '../mail/mail.module.js';
import { StoreModule } from '../store/store.module.js';
import { AcceptInvitation } from './people/accept-invitation.js';
import { AnyYard } from './people/any-yard.js';
import { ChangeRole } from './people/change-role.js';
import { CreateApiKey } from './people/create-api-key.js';
import { FindCaller } from './people/find-caller.js';
import { FindKeyHolder } from './people/find-key-holder.js';
import { FoundYard } from './people/found-yard.js';
import { InvitePerson } from './people/invite-person.js';
import { MayFoundYard } from './people/may-found-yard.js';
import { MendAddress } from './people/mend-address.js';
import { PersonLeft } from './people/person-left.js';
import { ReadInvitation } from './people/read-invitation.js';
import { RevokeApiKey } from './people/revoke-api-key.js';
import { RevokeInvitation } from './people/revoke-invitation.js';
import { SendResetLetter } from './people/send-reset-letter.js';
import { ShowPeople } from './people/show-people.js';
import { SwitchYard } from './people/switch-yard.js';

const PEOPLE = [
  AcceptInvitation,
  AnyYard,
  ChangeRole,
  CreateApiKey,
  FindCaller,
  FindKeyHolder,
  FoundYard,
  InvitePerson,
  MayFoundYard,
  MendAddress,
  PersonLeft,
  ReadInvitation,
  RevokeApiKey,
  RevokeInvitation,
  SendResetLetter,
  ShowPeople,
  SwitchYard,
];

const USE_CASES = [...PEOPLE];

/** Everything the service does, for every door. */
@Module({ imports: [StoreModule, MailModule], providers: USE_CASES, exports: USE_CASES })
export class UseCasesModule {}
