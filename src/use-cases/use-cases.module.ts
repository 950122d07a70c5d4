import { Module } from '@nestjs/common';
import { Letterhead } from '../mail/letterhead.js';
import { MailModule } from '../mail/mail.module.js';
import { DeckLifeStore } from '../store/deck-life-store.js';
import { MachineStore } from '../store/machine-store.js';
import { MembershipStore } from '../store/membership-store.js';
import { NoticeStore } from '../store/notice-store.js';
import { ResultStore } from '../store/result-store.js';
import { StoreModule } from '../store/store.module.js';
import { TowVehicleStore } from '../store/tow-vehicle-store.js';
import { TrailerStore } from '../store/trailer-store.js';
import { TrailerBriefView } from '../store/views/trailer-brief.view.js';
import { YardStore } from '../store/yard-store.js';
import { CheckFit } from './assessments/check-fit.js';
import { FindBetterTrailer } from './assessments/find-better-trailer.js';
import { RankTrailers } from './assessments/rank-trailers.js';
import { RankYard } from './assessments/rank-yard.js';
import { Reassess } from './assessments/reassess.js';
import { RebuildResults } from './assessments/rebuild-results.js';
import { CorrectCheck } from './checks/correct-check.js';
import { RecordCheck } from './checks/record-check.js';
import { HandOut } from './handovers/hand-out.js';
import { TakeBack } from './handovers/take-back.js';
import { WithdrawHandover } from './handovers/withdraw-handover.js';
import { LiftHold } from './holds/lift-hold.js';
import { OpenHold } from './holds/open-hold.js';
import { BookJob } from './jobs/book-job.js';
import { CancelJob } from './jobs/cancel-job.js';
import { ChangeJob } from './jobs/change-job.js';
import { FindJobNames } from './jobs/find-job-names.js';
import { FinishJob } from './jobs/finish-job.js';
import { AddMachine } from './machines/add-machine.js';
import { AddTowVehicle } from './machines/add-tow-vehicle.js';
import { ReplaceMachine } from './machines/replace-machine.js';
import { ReviseMachine } from './machines/revise-machine.js';
import { ReviseTowVehicle } from './machines/revise-tow-vehicle.js';
import { AnswerItem } from './notices/answer-item.js';
import { DeliverNotice } from './notices/deliver-notice.js';
import { FindTimeZone } from './notices/find-time-zone.js';
import { FindYardsWithWork } from './notices/find-yards-with-work.js';
import { ListYards } from './notices/list-yards.js';
import { PlanYardDay } from './notices/plan-yard-day.js';
import { PreviewYardDay } from './notices/preview-yard-day.js';
import { RecordBounce } from './notices/record-bounce.js';
import { SendAgain } from './notices/send-again.js';
import { ShowItem } from './notices/show-item.js';
import { StopNotices } from './notices/stop-notices.js';
import { WakeTrailers } from './notices/wake-trailers.js';
import { AcceptInvitation } from './people/accept-invitation.js';
import { AnyYard } from './people/any-yard.js';
import { ChangeLicence } from './people/change-licence.js';
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
import { ListFacts } from './read/list-facts.js';
import { ListHistory } from './read/list-history.js';
import { ListHolds } from './read/list-holds.js';
import { ListTrailerHolds } from './read/list-trailer-holds.js';
import { ReadTrailer } from './read/read-trailer.js';
import { ReadTrailerFacts } from './read/read-trailer-facts.js';
import { ReadWorkings } from './read/read-workings.js';
import { CorrectReading } from './readings/correct-reading.js';
import { RecordReading } from './readings/record-reading.js';
import { ShowCheckRecord } from './show/show-check-record.js';
import { ShowCheckSheet } from './show/show-check-sheet.js';
import { ShowChoices } from './show/show-choices.js';
import { ShowDue } from './show/show-due.js';
import { ShowFlags } from './show/show-flags.js';
import { ShowGate } from './show/show-gate.js';
import { ShowHandover } from './show/show-handover.js';
import { ShowHandoverForm } from './show/show-handover-form.js';
import { ShowHandovers } from './show/show-handovers.js';
import { ShowJob } from './show/show-job.js';
import { ShowJobs } from './show/show-jobs.js';
import { ShowLoadCheck } from './show/show-load-check.js';
import { ShowMachines } from './show/show-machines.js';
import { ShowMove } from './show/show-move.js';
import { ShowMoves } from './show/show-moves.js';
import { ShowNotice } from './show/show-notice.js';
import { ShowNotices } from './show/show-notices.js';
import { ShowPhoto } from './show/show-photo.js';
import { ShowTimeline } from './show/show-timeline.js';
import { ShowTrailer } from './show/show-trailer.js';
import { ShowTrailerForm } from './show/show-trailer-form.js';
import { ShowTrailerHistory } from './show/show-trailer-history.js';
import { ShowTrailers } from './show/show-trailers.js';
import { ShowYard } from './show/show-yard.js';
import { AddTrailer } from './trailers/add-trailer.js';
import { CorrectPart } from './trailers/correct-part.js';
import { FitPart } from './trailers/fit-part.js';
import { RemovePart } from './trailers/remove-part.js';
import { ReviseBuildSheet } from './trailers/revise-build-sheet.js';
import { UpdateTrailer } from './trailers/update-trailer.js';
import { CorrectTrip } from './trips/correct-trip.js';
import { RecordTrip } from './trips/record-trip.js';
import { WithdrawTrip } from './trips/withdraw-trip.js';
import { RetireCheckKind } from './yard/retire-check-kind.js';
import { SetCheckKind } from './yard/set-check-kind.js';
import { SetYardSettings } from './yard/set-yard-settings.js';

const PEOPLE = [
  AcceptInvitation,
  AnyYard,
  ChangeLicence,
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

const FACTS = [
  CheckFit,
  FindBetterTrailer,
  RankTrailers,
  RebuildResults,
  CorrectCheck,
  RecordCheck,
  HandOut,
  TakeBack,
  WithdrawHandover,
  LiftHold,
  OpenHold,
  BookJob,
  CancelJob,
  ChangeJob,
  FinishJob,
  AddMachine,
  AddTowVehicle,
  ReplaceMachine,
  ReviseMachine,
  ReviseTowVehicle,
  CorrectReading,
  RecordReading,
  AddTrailer,
  CorrectPart,
  FitPart,
  RemovePart,
  ReviseBuildSheet,
  UpdateTrailer,
  CorrectTrip,
  RecordTrip,
  WithdrawTrip,
  RetireCheckKind,
  SetCheckKind,
  SetYardSettings,
];

const NOTICES = [
  AnswerItem,
  DeliverNotice,
  FindTimeZone,
  FindYardsWithWork,
  ListYards,
  PlanYardDay,
  PreviewYardDay,
  RecordBounce,
  SendAgain,
  ShowItem,
  WakeTrailers,
];

const SCREENS = [
  ShowCheckRecord,
  ShowCheckSheet,
  ShowChoices,
  ShowLoadCheck,
  ShowDue,
  ShowFlags,
  ShowGate,
  ShowHandover,
  ShowHandoverForm,
  ShowHandovers,
  ShowJob,
  ShowJobs,
  ShowMachines,
  ShowMove,
  ShowMoves,
  ShowNotice,
  ShowNotices,
  ShowPhoto,
  ShowTimeline,
  ShowTrailer,
  ShowTrailerForm,
  ShowTrailerHistory,
  ShowTrailers,
  ShowYard,
];

const READS = [ListFacts, ListHistory, ListHolds, ListTrailerHolds, ReadTrailer, ReadTrailerFacts, ReadWorkings];

const USE_CASES = [...SCREENS, ...READS, ...FACTS, ...NOTICES, ...PEOPLE];

/** The step that every fact recorded ends with; a stop it finds becomes a notice in the same transaction. */
const REASSESS = {
  provide: Reassess,
  inject: [TrailerStore, ResultStore, DeckLifeStore, NoticeStore, MembershipStore, YardStore, Letterhead],
  useFactory: (
    trailers: TrailerStore,
    results: ResultStore,
    decks: DeckLifeStore,
    notices: NoticeStore,
    members: MembershipStore,
    yards: YardStore,
    letterhead: Letterhead,
  ) => new Reassess(trailers, results, decks, new StopNotices(notices, members, yards, letterhead)),
};

const FIND_JOB_NAMES = {
  provide: FindJobNames,
  inject: [TrailerStore, MachineStore, TowVehicleStore, MembershipStore],
  useFactory: (
    trailers: TrailerStore,
    machines: MachineStore,
    towVehicles: TowVehicleStore,
    members: MembershipStore,
  ) => new FindJobNames(trailers, machines, towVehicles, members),
};

const RANK_YARD = {
  provide: RankYard,
  inject: [TrailerBriefView, TrailerStore, MachineStore],
  useFactory: (briefs: TrailerBriefView, trailers: TrailerStore, machines: MachineStore) =>
    new RankYard(briefs, trailers, machines),
};

/** Everything the service does, for every door. */
@Module({
  imports: [StoreModule, MailModule],
  providers: [FIND_JOB_NAMES, RANK_YARD, REASSESS, ...USE_CASES],
  exports: USE_CASES,
})
export class UseCasesModule {}
