import { Module } from '@nestjs/common';
import { Config } from '../config.js';
import { ApiTokenStore } from './api-token-store.js';
import { AuditStore } from './audit-store.js';
import { BuildStore } from './build-store.js';
import { CheckKindStore } from './check-kind-store.js';
import { CheckStore } from './check-store.js';
import { Database } from './database.js';
import { DeckLifeStore } from './deck-life-store.js';
import { HandoverStore } from './handover-store.js';
import { HoldStore } from './hold-store.js';
import { InvitationStore } from './invitation-store.js';
import { JobStore } from './job-store.js';
import { MachineStore } from './machine-store.js';
import { MembershipStore } from './membership-store.js';
import { NoticeStore } from './notice-store.js';
import { PartStore } from './part-store.js';
import { ReadingStore } from './reading-store.js';
import { ResultStore } from './result-store.js';
import { TowVehicleStore } from './tow-vehicle-store.js';
import { TrailerStore } from './trailer-store.js';
import { TripStore } from './trip-store.js';
import { CheckRecordView } from './views/check-record.view.js';
import { ChoicesView } from './views/choices.view.js';
import { DueListView } from './views/due-list.view.js';
import { FactListView } from './views/fact-list.view.js';
import { FlagListView } from './views/flag-list.view.js';
import { HistoryView } from './views/history.view.js';
import { HoldListView } from './views/hold-list.view.js';
import { JobListView } from './views/job-list.view.js';
import { NoticeListView } from './views/notice-list.view.js';
import { TimelineView } from './views/timeline.view.js';
import { TrailerBriefView } from './views/trailer-brief.view.js';
import { TrailerListView } from './views/trailer-list.view.js';
import { YardStore } from './yard-store.js';

const STORES = [
  ApiTokenStore,
  AuditStore,
  BuildStore,
  CheckKindStore,
  CheckStore,
  DeckLifeStore,
  HandoverStore,
  HoldStore,
  InvitationStore,
  JobStore,
  MachineStore,
  MembershipStore,
  NoticeStore,
  PartStore,
  ReadingStore,
  ResultStore,
  TowVehicleStore,
  TrailerStore,
  TripStore,
  YardStore,
];

/** What screens read: wide lists, changed nowhere. */
const VIEWS = [
  CheckRecordView,
  ChoicesView,
  DueListView,
  FactListView,
  FlagListView,
  HistoryView,
  HoldListView,
  JobListView,
  NoticeListView,
  TrailerBriefView,
  TimelineView,
  TrailerListView,
];

function database(config: Config): Database {
  if (config.databaseUrl === null) throw new Error('the service was built before its database was known');
  return new Database(config.databaseUrl);
}

/** Facts, results and settings in Postgres. */
@Module({
  providers: [{ provide: Database, useFactory: database, inject: [Config] }, ...STORES, ...VIEWS],
  exports: [Database, ...STORES, ...VIEWS],
})
export class StoreModule {}
