import { Module } from '@nestjs/common';
import { Letterhead } from '../mail/letterhead.js';
import { MailModule } from '../mail/mail.module.js';
import { MembershipStore } from '../store/membership-store.js';
import { NoticeStore } from '../store/notice-store.js';
import { ResultStore } from '../store/result-store.js';
import { StoreModule } from '../store/store.module.js';
import { TrailerStore } from '../store/trailer-store.js';
import { YardStore } from '../store/yard-store.js';
import { Reassess } from './assessments/reassess.js';
import { AnswerItem } from './notices/answer-item.js';
import { DeliverNotice } from './notices/deliver-notice.js';
import { FindTimeZone } from './notices/find-time-zone.js';
import { FindYardsWithWork } from './notices/find-yards-with-work.js';
import { PlanYardDay } from './notices/plan-yard-day.js';
import { PreviewYardDay } from './notices/preview-yard-day.js';
import { RecordBounce } from './notices/record-bounce.js';
import { SendAgain } from './notices/send-again.js';
import { StopNotices } from './notices/stop-notices.js';
import { WakeTrailers } from './notices/wake-trailers.js';
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

const NOTICES = [
  AnswerItem,
  DeliverNotice,
  FindTimeZone,
  FindYardsWithWork,
  PlanYardDay,
  PreviewYardDay,
  RecordBounce,
  SendAgain,
  WakeTrailers,
];

const USE_CASES = [...NOTICES, ...PEOPLE];

/** The step that every fact recorded ends with; a stop it finds becomes a notice in the same transaction. */
const REASSESS = {
  provide: Reassess,
  inject: [TrailerStore, ResultStore, NoticeStore, MembershipStore, YardStore, Letterhead],
  useFactory: (
    trailers: TrailerStore,
    results: ResultStore,
    notices: NoticeStore,
    members: MembershipStore,
    yards: YardStore,
    letterhead: Letterhead,
  ) => new Reassess(trailers, results, new StopNotices(notices, members, yards, letterhead)),
};

/** Everything the service does, for every door. */
@Module({ imports: [StoreModule, MailModule], providers: [REASSESS, ...USE_CASES], exports: USE_CASES })
export class UseCasesModule {}
