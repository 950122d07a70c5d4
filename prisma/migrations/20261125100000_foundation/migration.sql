-- Tables, keys and indexes as `prisma/schema.prisma` has them (made by Prisma from the copy beside this file), then what
-- Prisma cannot say: checks, roles, rights and row level security. Forward only: never edit after it is released.

-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateTable
CREATE TABLE "yard" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "slug" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL DEFAULT 'America/New_York',
    "place" TEXT,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "quiet_from_hour" INTEGER NOT NULL DEFAULT 20,
    "quiet_to_hour" INTEGER NOT NULL DEFAULT 6,
    "plan_hour" INTEGER NOT NULL DEFAULT 6,
    "tire_age_limit_years" DOUBLE PRECISION NOT NULL DEFAULT 6,
    "weigh_first_share" DOUBLE PRECISION NOT NULL DEFAULT 0.03,
    "use_window_days" INTEGER NOT NULL DEFAULT 90,
    "drift_trips" INTEGER NOT NULL DEFAULT 10,
    "planned_on" DATE,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "yard_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "person" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "token" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(6) NOT NULL,
    "ip_address" TEXT,
    "user_agent" TEXT,
    "yard_id" UUID,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sign_in_account" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "account_id" TEXT NOT NULL,
    "provider_id" TEXT NOT NULL,
    "access_token" TEXT,
    "refresh_token" TEXT,
    "id_token" TEXT,
    "access_token_expires_at" TIMESTAMPTZ(6),
    "refresh_token_expires_at" TIMESTAMPTZ(6),
    "scope" TEXT,
    "password" TEXT,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "sign_in_account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "verification" (
    "id" UUID NOT NULL,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(6) NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(6) NOT NULL,

    CONSTRAINT "verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_limit" (
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "last_request" BIGINT NOT NULL,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "membership" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "cdl" TEXT,
    "left_on" DATE,
    "bounced_at" TIMESTAMPTZ(6),
    "bounce_note" TEXT,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "membership_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "invitation" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "email" TEXT NOT NULL,
    "name" TEXT,
    "role" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "invited_by" UUID NOT NULL,
    "expires_at" TIMESTAMPTZ(6) NOT NULL,
    "accepted_at" TIMESTAMPTZ(6),
    "revoked_at" TIMESTAMPTZ(6),
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "invitation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "api_token" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "last_used_at" TIMESTAMPTZ(6),
    "revoked_at" TIMESTAMPTZ(6),

    CONSTRAINT "api_token_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "trailer" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "yard_number" TEXT NOT NULL,
    "name" TEXT,
    "vin" TEXT,
    "status" TEXT NOT NULL DEFAULT 'in-service',
    "registration_plate" TEXT,
    "registration_expires_on" DATE,
    "insurance_expires_on" DATE,
    "bought_on" DATE,
    "bought_for_cents" INTEGER,
    "stored" TEXT,
    "note" TEXT,
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "trailer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "build_sheet" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID NOT NULL,
    "effective_from" DATE NOT NULL,
    "corrects_id" UUID,
    "withdrawn" BOOLEAN NOT NULL DEFAULT false,
    "body" TEXT,
    "gvwr_kg" DOUBLE PRECISION,
    "plate_cold_pressure_kpa" DOUBLE PRECISION,
    "empty_mass_kg" DOUBLE PRECISION,
    "empty_mass_basis" TEXT NOT NULL DEFAULT 'stated',
    "empty_tongue_n" DOUBLE PRECISION,
    "suspension" TEXT,
    "hitch_kind" TEXT,
    "coupler_rating_kg" DOUBLE PRECISION,
    "coupler_tongue_n" DOUBLE PRECISION,
    "ball_size_m" DOUBLE PRECISION,
    "hitch_height_adjustable" BOOLEAN,
    "chain_break_kg" DOUBLE PRECISION,
    "breakaway" BOOLEAN,
    "deck_material" TEXT,
    "deck_length_m" DOUBLE PRECISION,
    "deck_width_m" DOUBLE PRECISION,
    "deck_height_m" DOUBLE PRECISION,
    "tilt_length_m" DOUBLE PRECISION,
    "tilt_drive" TEXT,
    "deck_front_from_coupler_m" DOUBLE PRECISION,
    "plank_thickness_m" DOUBLE PRECISION,
    "plank_width_m" DOUBLE PRECISION,
    "crossmember_spacing_m" DOUBLE PRECISION,
    "frame_section" TEXT,
    "frame_depth_m" DOUBLE PRECISION,
    "tongue" TEXT,
    "bed_depth_m" DOUBLE PRECISION,
    "dovetail_m" DOUBLE PRECISION,
    "ramps" TEXT,
    "stabilizers" BOOLEAN,
    "fenders" TEXT,
    "fender_clear_width_m" DOUBLE PRECISION,
    "jack_count" INTEGER,
    "jack_lift_kg" DOUBLE PRECISION,
    "jack_support_kg" DOUBLE PRECISION,
    "bolt_pattern" TEXT,
    "nut_torque_nm" DOUBLE PRECISION,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "recorded_by" UUID,
    "door" TEXT NOT NULL,

    CONSTRAINT "build_sheet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "build_axle" (
    "yard_id" UUID NOT NULL,
    "build_sheet_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "gawr_kg" DOUBLE PRECISION,
    "rating_kg" DOUBLE PRECISION,
    "from_coupler_m" DOUBLE PRECISION,
    "brakes" TEXT,
    "lubricant" TEXT,
    "wheels_per_side" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "build_axle_pkey" PRIMARY KEY ("build_sheet_id","number")
);

-- CreateTable
CREATE TABLE "part" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "position" TEXT,
    "fitted_on" DATE,
    "removed_on" DATE,
    "corrects_id" UUID,
    "withdrawn" BOOLEAN NOT NULL DEFAULT false,
    "name" TEXT,
    "tire_size" TEXT,
    "tire_kind" TEXT,
    "load_index_single" INTEGER,
    "load_index_dual" INTEGER,
    "max_load_single_kg" DOUBLE PRECISION,
    "max_load_dual_kg" DOUBLE PRECISION,
    "load_range" TEXT,
    "max_cold_pressure_kpa" DOUBLE PRECISION,
    "date_code" TEXT,
    "cost_cents" INTEGER,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "recorded_by" UUID,
    "door" TEXT NOT NULL,

    CONSTRAINT "part_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "machine" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "mass_kg" DOUBLE PRECISION,
    "mass_basis" TEXT NOT NULL DEFAULT 'stated',
    "length_m" DOUBLE PRECISION,
    "width_m" DOUBLE PRECISION,
    "balance_point_m" DOUBLE PRECISION,
    "contact" TEXT,
    "replaces_machine_id" UUID,
    "retired_on" DATE,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "recorded_by" UUID,

    CONSTRAINT "machine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "tow_vehicle" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "gvwr_kg" DOUBLE PRECISION,
    "mass_kg" DOUBLE PRECISION,
    "gcwr_kg" DOUBLE PRECISION,
    "hitch_rating_kg" DOUBLE PRECISION,
    "hitch_tongue_n" DOUBLE PRECISION,
    "ball_size_m" DOUBLE PRECISION,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "tow_vehicle_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "trip" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID NOT NULL,
    "started_on" DATE NOT NULL,
    "ended_on" DATE NOT NULL,
    "distance_km" DOUBLE PRECISION,
    "machine_id" UUID,
    "job_id" UUID,
    "balance_point_m" DOUBLE PRECISION,
    "scale_gross_kg" DOUBLE PRECISION,
    "scale_tongue_n" DOUBLE PRECISION,
    "scale_axle_n" DOUBLE PRECISION[],
    "roads_known" BOOLEAN NOT NULL DEFAULT false,
    "roads" TEXT[],
    "corrects_id" UUID,
    "withdrawn" BOOLEAN NOT NULL DEFAULT false,
    "note" TEXT,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "recorded_by" UUID,
    "door" TEXT NOT NULL,

    CONSTRAINT "trip_pkey" PRIMARY KEY ("yard_id","id")
);

-- CreateTable
CREATE TABLE "trip_cargo" (
    "yard_id" UUID NOT NULL,
    "trip_id" UUID NOT NULL,
    "place" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "mass_kg" DOUBLE PRECISION NOT NULL,
    "basis" TEXT NOT NULL,
    "machine_id" UUID,
    "remedy" TEXT,

    CONSTRAINT "trip_cargo_pkey" PRIMARY KEY ("trip_id","place")
);

-- CreateTable
CREATE TABLE "meter_reading" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID NOT NULL,
    "taken_on" DATE NOT NULL,
    "shown_km" DOUBLE PRECISION NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'read',
    "meter_span_km" DOUBLE PRECISION,
    "corrects_id" UUID,
    "withdrawn" BOOLEAN NOT NULL DEFAULT false,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "recorded_by" UUID,
    "door" TEXT NOT NULL,

    CONSTRAINT "meter_reading_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID,
    "name" TEXT NOT NULL,
    "starts_on" DATE NOT NULL,
    "ends_on" DATE NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'booked',
    "distance_km" DOUBLE PRECISION,
    "work" TEXT NOT NULL DEFAULT 'own',
    "customer" TEXT,
    "commercial" BOOLEAN,
    "machine_id" UUID,
    "balance_point_m" DOUBLE PRECISION,
    "scale_gross_kg" DOUBLE PRECISION,
    "scale_tongue_n" DOUBLE PRECISION,
    "scale_axle_n" DOUBLE PRECISION[],
    "tow_vehicle_id" UUID,
    "driver_name" TEXT,
    "driver_cdl" TEXT,
    "hauler_person_id" UUID,
    "note" TEXT,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "recorded_by" UUID,
    "door" TEXT NOT NULL,

    CONSTRAINT "job_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job_cargo" (
    "yard_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "place" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "mass_kg" DOUBLE PRECISION NOT NULL,
    "basis" TEXT NOT NULL,
    "machine_id" UUID,
    "remedy" TEXT,

    CONSTRAINT "job_cargo_pkey" PRIMARY KEY ("job_id","place")
);

-- CreateTable
CREATE TABLE "check_kind" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "triggers" JSONB NOT NULL,
    "applies_to" JSONB NOT NULL,
    "safety" BOOLEAN NOT NULL,
    "blocks" TEXT NOT NULL,
    "proof" JSONB,
    "work" JSONB NOT NULL,
    "lines" JSONB NOT NULL,
    "lead_days" INTEGER NOT NULL,
    "owner_person_id" UUID,
    "backup_person_id" UUID,
    "source" TEXT NOT NULL,
    "retired" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "check_kind_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "check_record" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID NOT NULL,
    "check_kind_id" UUID NOT NULL,
    "done_on" DATE NOT NULL,
    "outcome" TEXT NOT NULL,
    "by_person_id" UUID,
    "by_name" TEXT NOT NULL,
    "inspected_by" TEXT,
    "proof_on_trailer" BOOLEAN,
    "note" TEXT,
    "cost_cents" INTEGER,
    "corrects_id" UUID,
    "withdrawn" BOOLEAN NOT NULL DEFAULT false,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "recorded_by" UUID,
    "door" TEXT NOT NULL,

    CONSTRAINT "check_record_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "checked_line" (
    "yard_id" UUID NOT NULL,
    "check_record_id" UUID NOT NULL,
    "place" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "result" TEXT,
    "position" TEXT,
    "quantity" TEXT,
    "value" DOUBLE PRECISION,
    "note" TEXT,

    CONSTRAINT "checked_line_pkey" PRIMARY KEY ("check_record_id","place")
);

-- CreateTable
CREATE TABLE "check_photo" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "check_record_id" UUID NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "check_photo_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "hold" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID NOT NULL,
    "opened_on" DATE NOT NULL,
    "reason" TEXT NOT NULL,
    "opened_by" UUID,
    "opened_by_name" TEXT NOT NULL,
    "check_record_id" UUID,
    "lifted_on" DATE,
    "lifted_by" UUID,
    "lifted_by_name" TEXT,
    "lift_reason" TEXT,
    "lift_check_record_id" UUID,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "hold_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "trailer_result" (
    "trailer_id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "as_of" DATE NOT NULL,
    "wake_on" DATE,
    "readiness" TEXT NOT NULL,
    "stop_flags" INTEGER NOT NULL,
    "limit_flags" INTEGER NOT NULL,
    "watch_flags" INTEGER NOT NULL,
    "overdue" INTEGER NOT NULL,
    "next_due_on" DATE,
    "payload_kg" DOUBLE PRECISION,
    "trailer_class" TEXT,
    "assessment" JSONB NOT NULL,

    CONSTRAINT "trailer_result_pkey" PRIMARY KEY ("trailer_id")
);

-- CreateTable
CREATE TABLE "due_result" (
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID NOT NULL,
    "check_kind_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "due_on" DATE,
    "due" JSONB NOT NULL,

    CONSTRAINT "due_result_pkey" PRIMARY KEY ("trailer_id","check_kind_id")
);

-- CreateTable
CREATE TABLE "flag_result" (
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "rule" TEXT NOT NULL,
    "severity" TEXT NOT NULL,
    "since" DATE,
    "flag" JSONB NOT NULL,

    CONSTRAINT "flag_result_pkey" PRIMARY KEY ("trailer_id","key")
);

-- CreateTable
CREATE TABLE "notice" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "person_id" UUID,
    "kind" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "to_name" TEXT NOT NULL,
    "to_email" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "body_text" TEXT NOT NULL,
    "body_html" TEXT NOT NULL,
    "message_id" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "not_before" TIMESTAMPTZ(6) NOT NULL,
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "last_attempt_at" TIMESTAMPTZ(6),
    "last_error" TEXT,
    "sent_at" TIMESTAMPTZ(6),
    "created_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "notice_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "notice_item" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "notice_id" UUID NOT NULL,
    "item_key" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "trailer_id" UUID,
    "check_kind_id" UUID,
    "job_id" UUID,
    "told_on" DATE NOT NULL,
    "item" JSONB NOT NULL,

    CONSTRAINT "notice_item_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "notice_answer" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "item_key" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "answer" TEXT NOT NULL,
    "until_on" DATE,
    "reason" TEXT,
    "check_record_id" UUID,
    "answered_on" DATE NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "notice_answer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "audit_entry" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "person_id" UUID,
    "who" TEXT NOT NULL,
    "door" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subject_id" UUID,
    "trailer_id" UUID,
    "detail" JSONB NOT NULL,

    CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "yard_slug_key" ON "yard"("slug");

-- CreateIndex
CREATE UNIQUE INDEX "person_email_key" ON "person"("email");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_key" ON "session"("token");

-- CreateIndex
CREATE INDEX "session_person_id_idx" ON "session"("person_id");

-- CreateIndex
CREATE INDEX "sign_in_account_person_id_idx" ON "sign_in_account"("person_id");

-- CreateIndex
CREATE INDEX "verification_identifier_idx" ON "verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "rate_limit_key_key" ON "rate_limit"("key");

-- CreateIndex
CREATE INDEX "membership_person_id_idx" ON "membership"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "membership_yard_id_person_id_key" ON "membership"("yard_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "invitation_token_hash_key" ON "invitation"("token_hash");

-- CreateIndex
CREATE INDEX "invitation_yard_id_idx" ON "invitation"("yard_id");

-- CreateIndex
CREATE UNIQUE INDEX "api_token_token_hash_key" ON "api_token"("token_hash");

-- CreateIndex
CREATE INDEX "api_token_yard_id_idx" ON "api_token"("yard_id");

-- CreateIndex
CREATE UNIQUE INDEX "trailer_yard_id_id_key" ON "trailer"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "trailer_yard_id_yard_number_key" ON "trailer"("yard_id", "yard_number");

-- CreateIndex
CREATE UNIQUE INDEX "build_sheet_yard_id_id_key" ON "build_sheet"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "build_sheet_yard_id_trailer_id_id_key" ON "build_sheet"("yard_id", "trailer_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "build_sheet_yard_id_trailer_id_corrects_id_key" ON "build_sheet"("yard_id", "trailer_id", "corrects_id") WHERE (corrects_id is not null);

-- CreateIndex
CREATE UNIQUE INDEX "part_yard_id_id_key" ON "part"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "part_yard_id_trailer_id_id_key" ON "part"("yard_id", "trailer_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "part_yard_id_trailer_id_corrects_id_key" ON "part"("yard_id", "trailer_id", "corrects_id") WHERE (corrects_id is not null);

-- CreateIndex
CREATE UNIQUE INDEX "machine_yard_id_id_key" ON "machine"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "tow_vehicle_yard_id_id_key" ON "tow_vehicle"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "trip_yard_id_trailer_id_id_key" ON "trip"("yard_id", "trailer_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "trip_yard_id_trailer_id_corrects_id_key" ON "trip"("yard_id", "trailer_id", "corrects_id") WHERE (corrects_id is not null);

-- CreateIndex
CREATE UNIQUE INDEX "meter_reading_yard_id_id_key" ON "meter_reading"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "meter_reading_yard_id_trailer_id_id_key" ON "meter_reading"("yard_id", "trailer_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "meter_reading_yard_id_trailer_id_corrects_id_key" ON "meter_reading"("yard_id", "trailer_id", "corrects_id") WHERE (corrects_id is not null);

-- CreateIndex
CREATE INDEX "job_yard_id_trailer_id_starts_on_idx" ON "job"("yard_id", "trailer_id", "starts_on");

-- CreateIndex
CREATE INDEX "job_yard_id_starts_on_idx" ON "job"("yard_id", "starts_on");

-- CreateIndex
CREATE UNIQUE INDEX "job_yard_id_id_key" ON "job"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "check_kind_yard_id_id_key" ON "check_kind"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "check_kind_yard_id_code_key" ON "check_kind"("yard_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "check_record_yard_id_id_key" ON "check_record"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "check_record_yard_id_trailer_id_id_key" ON "check_record"("yard_id", "trailer_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "check_record_yard_id_trailer_id_corrects_id_key" ON "check_record"("yard_id", "trailer_id", "corrects_id") WHERE (corrects_id is not null);

-- CreateIndex
CREATE INDEX "check_photo_yard_id_check_record_id_idx" ON "check_photo"("yard_id", "check_record_id");

-- CreateIndex
CREATE INDEX "hold_yard_id_trailer_id_idx" ON "hold"("yard_id", "trailer_id");

-- CreateIndex
CREATE UNIQUE INDEX "hold_yard_id_id_key" ON "hold"("yard_id", "id");

-- CreateIndex
CREATE INDEX "trailer_result_yard_id_wake_on_idx" ON "trailer_result"("yard_id", "wake_on");

-- CreateIndex
CREATE UNIQUE INDEX "trailer_result_yard_id_trailer_id_key" ON "trailer_result"("yard_id", "trailer_id");

-- CreateIndex
CREATE INDEX "due_result_yard_id_state_due_on_idx" ON "due_result"("yard_id", "state", "due_on");

-- CreateIndex
CREATE INDEX "flag_result_yard_id_severity_idx" ON "flag_result"("yard_id", "severity");

-- CreateIndex
CREATE UNIQUE INDEX "notice_message_id_key" ON "notice"("message_id");

-- CreateIndex
CREATE INDEX "notice_state_not_before_idx" ON "notice"("state", "not_before");

-- CreateIndex
CREATE UNIQUE INDEX "notice_yard_id_id_key" ON "notice"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "notice_yard_id_key_key" ON "notice"("yard_id", "key");

-- CreateIndex
CREATE INDEX "notice_item_yard_id_item_key_idx" ON "notice_item"("yard_id", "item_key");

-- CreateIndex
CREATE INDEX "notice_item_notice_id_idx" ON "notice_item"("notice_id");

-- CreateIndex
CREATE INDEX "notice_answer_yard_id_item_key_idx" ON "notice_answer"("yard_id", "item_key");

-- CreateIndex
CREATE INDEX "audit_entry_yard_id_trailer_id_at_idx" ON "audit_entry"("yard_id", "trailer_id", "at");

-- CreateIndex
CREATE INDEX "audit_entry_yard_id_at_idx" ON "audit_entry"("yard_id", "at");

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_yard_id_person_id_fkey" FOREIGN KEY ("yard_id", "person_id") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sign_in_account" ADD CONSTRAINT "sign_in_account_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_yard_id_invited_by_fkey" FOREIGN KEY ("yard_id", "invited_by") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "api_token" ADD CONSTRAINT "api_token_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "api_token" ADD CONSTRAINT "api_token_yard_id_person_id_fkey" FOREIGN KEY ("yard_id", "person_id") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "trailer" ADD CONSTRAINT "trailer_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "build_sheet" ADD CONSTRAINT "build_sheet_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "build_sheet" ADD CONSTRAINT "build_sheet_yard_id_trailer_id_corrects_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "corrects_id") REFERENCES "build_sheet"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "build_axle" ADD CONSTRAINT "build_axle_yard_id_build_sheet_id_fkey" FOREIGN KEY ("yard_id", "build_sheet_id") REFERENCES "build_sheet"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part" ADD CONSTRAINT "part_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part" ADD CONSTRAINT "part_yard_id_trailer_id_corrects_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "corrects_id") REFERENCES "part"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "machine" ADD CONSTRAINT "machine_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "machine" ADD CONSTRAINT "machine_yard_id_replaces_machine_id_fkey" FOREIGN KEY ("yard_id", "replaces_machine_id") REFERENCES "machine"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "tow_vehicle" ADD CONSTRAINT "tow_vehicle_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "trip" ADD CONSTRAINT "trip_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "trip" ADD CONSTRAINT "trip_yard_id_machine_id_fkey" FOREIGN KEY ("yard_id", "machine_id") REFERENCES "machine"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "trip" ADD CONSTRAINT "trip_yard_id_job_id_fkey" FOREIGN KEY ("yard_id", "job_id") REFERENCES "job"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "trip" ADD CONSTRAINT "trip_yard_id_trailer_id_corrects_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "corrects_id") REFERENCES "trip"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "trip_cargo" ADD CONSTRAINT "trip_cargo_yard_id_trip_id_fkey" FOREIGN KEY ("yard_id", "trip_id") REFERENCES "trip"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "trip_cargo" ADD CONSTRAINT "trip_cargo_yard_id_machine_id_fkey" FOREIGN KEY ("yard_id", "machine_id") REFERENCES "machine"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "meter_reading" ADD CONSTRAINT "meter_reading_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "meter_reading" ADD CONSTRAINT "meter_reading_yard_id_trailer_id_corrects_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "corrects_id") REFERENCES "meter_reading"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_yard_id_machine_id_fkey" FOREIGN KEY ("yard_id", "machine_id") REFERENCES "machine"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_yard_id_tow_vehicle_id_fkey" FOREIGN KEY ("yard_id", "tow_vehicle_id") REFERENCES "tow_vehicle"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_yard_id_hauler_person_id_fkey" FOREIGN KEY ("yard_id", "hauler_person_id") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_cargo" ADD CONSTRAINT "job_cargo_yard_id_job_id_fkey" FOREIGN KEY ("yard_id", "job_id") REFERENCES "job"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_cargo" ADD CONSTRAINT "job_cargo_yard_id_machine_id_fkey" FOREIGN KEY ("yard_id", "machine_id") REFERENCES "machine"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_kind" ADD CONSTRAINT "check_kind_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_kind" ADD CONSTRAINT "check_kind_yard_id_owner_person_id_fkey" FOREIGN KEY ("yard_id", "owner_person_id") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_kind" ADD CONSTRAINT "check_kind_yard_id_backup_person_id_fkey" FOREIGN KEY ("yard_id", "backup_person_id") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_record" ADD CONSTRAINT "check_record_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_record" ADD CONSTRAINT "check_record_yard_id_check_kind_id_fkey" FOREIGN KEY ("yard_id", "check_kind_id") REFERENCES "check_kind"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_record" ADD CONSTRAINT "check_record_yard_id_by_person_id_fkey" FOREIGN KEY ("yard_id", "by_person_id") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_record" ADD CONSTRAINT "check_record_yard_id_trailer_id_corrects_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "corrects_id") REFERENCES "check_record"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "checked_line" ADD CONSTRAINT "checked_line_yard_id_check_record_id_fkey" FOREIGN KEY ("yard_id", "check_record_id") REFERENCES "check_record"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_photo" ADD CONSTRAINT "check_photo_yard_id_check_record_id_fkey" FOREIGN KEY ("yard_id", "check_record_id") REFERENCES "check_record"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "hold" ADD CONSTRAINT "hold_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "hold" ADD CONSTRAINT "hold_yard_id_trailer_id_check_record_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "check_record_id") REFERENCES "check_record"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "hold" ADD CONSTRAINT "hold_yard_id_trailer_id_lift_check_record_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "lift_check_record_id") REFERENCES "check_record"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "trailer_result" ADD CONSTRAINT "trailer_result_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "due_result" ADD CONSTRAINT "due_result_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "due_result" ADD CONSTRAINT "due_result_yard_id_check_kind_id_fkey" FOREIGN KEY ("yard_id", "check_kind_id") REFERENCES "check_kind"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "flag_result" ADD CONSTRAINT "flag_result_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice" ADD CONSTRAINT "notice_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice" ADD CONSTRAINT "notice_yard_id_person_id_fkey" FOREIGN KEY ("yard_id", "person_id") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice_item" ADD CONSTRAINT "notice_item_yard_id_notice_id_fkey" FOREIGN KEY ("yard_id", "notice_id") REFERENCES "notice"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice_item" ADD CONSTRAINT "notice_item_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice_item" ADD CONSTRAINT "notice_item_yard_id_check_kind_id_fkey" FOREIGN KEY ("yard_id", "check_kind_id") REFERENCES "check_kind"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice_item" ADD CONSTRAINT "notice_item_yard_id_job_id_fkey" FOREIGN KEY ("yard_id", "job_id") REFERENCES "job"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice_answer" ADD CONSTRAINT "notice_answer_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice_answer" ADD CONSTRAINT "notice_answer_yard_id_person_id_fkey" FOREIGN KEY ("yard_id", "person_id") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notice_answer" ADD CONSTRAINT "notice_answer_yard_id_check_record_id_fkey" FOREIGN KEY ("yard_id", "check_record_id") REFERENCES "check_record"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "audit_entry" ADD CONSTRAINT "audit_entry_yard_id_fkey" FOREIGN KEY ("yard_id") REFERENCES "yard"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What physics, or the words we agreed on, forbid. Bounds are far outside any road trailer; they also keep out NaN and
-- infinity, which Postgres sorts above every number.

ALTER TABLE "yard"
  ADD CONSTRAINT "yard_name_check" CHECK (btrim("name") <> ''),
  -- A zone that Postgres does not know is an error here, and not later in the questions of the timer for all yards.
  ADD CONSTRAINT "yard_time_zone_check" CHECK (timezone("time_zone", TIMESTAMPTZ 'epoch') IS NOT NULL),
  ADD CONSTRAINT "yard_hours_check" CHECK ("quiet_from_hour" BETWEEN 0 AND 23 AND "quiet_to_hour" BETWEEN 0 AND 23 AND "plan_hour" BETWEEN 0 AND 23),
  ADD CONSTRAINT "yard_tire_age_limit_years_check" CHECK ("tire_age_limit_years" > 0 AND "tire_age_limit_years" <= 30),
  ADD CONSTRAINT "yard_weigh_first_share_check" CHECK ("weigh_first_share" BETWEEN 0 AND 1),
  ADD CONSTRAINT "yard_use_window_days_check" CHECK ("use_window_days" BETWEEN 1 AND 3660),
  ADD CONSTRAINT "yard_drift_trips_check" CHECK ("drift_trips" BETWEEN 1 AND 1000);

ALTER TABLE "membership"
  ADD CONSTRAINT "membership_role_check" CHECK ("role" IN ('owner', 'shop', 'hand', 'viewer')),
  ADD CONSTRAINT "membership_cdl_check" CHECK ("cdl" IN ('A', 'B', 'none'));

ALTER TABLE "invitation"
  ADD CONSTRAINT "invitation_role_check" CHECK ("role" IN ('owner', 'shop', 'hand', 'viewer'));

ALTER TABLE "trailer"
  ADD CONSTRAINT "trailer_yard_number_check" CHECK (btrim("yard_number") <> ''),
  ADD CONSTRAINT "trailer_status_check" CHECK ("status" IN ('in-service', 'sold', 'scrapped')),
  ADD CONSTRAINT "trailer_stored_check" CHECK ("stored" IN ('open', 'cover')),
  ADD CONSTRAINT "trailer_bought_for_cents_check" CHECK ("bought_for_cents" >= 0);

ALTER TABLE "build_sheet"
  ADD CONSTRAINT "build_sheet_body_check" CHECK ("body" IN ('fixed-deck', 'gravity-tilt', 'powered-gravity-tilt', 'full-powered-tilt', 'deck-over')),
  ADD CONSTRAINT "build_sheet_empty_mass_basis_check" CHECK ("empty_mass_basis" IN ('weighed', 'stated', 'assumed')),
  ADD CONSTRAINT "build_sheet_suspension_check" CHECK ("suspension" IN ('slipper-spring', 'eye-to-eye-spring', 'torsion')),
  ADD CONSTRAINT "build_sheet_hitch_kind_check" CHECK ("hitch_kind" IN ('bumper-pull', 'gooseneck', 'pintle')),
  ADD CONSTRAINT "build_sheet_deck_material_check" CHECK ("deck_material" IN ('pine', 'oak', 'rubber-faced', 'tread-plate', 'other')),
  ADD CONSTRAINT "build_sheet_tilt_drive_check" CHECK ("tilt_drive" IN ('damping-cylinder', 'power-unit')),
  ADD CONSTRAINT "build_sheet_frame_section_check" CHECK ("frame_section" IN ('c-channel', 'i-beam', 'tube')),
  ADD CONSTRAINT "build_sheet_tongue_check" CHECK ("tongue" IN ('wrapped-to-axles', 'part-way', 'integral')),
  ADD CONSTRAINT "build_sheet_ramps_check" CHECK ("ramps" IN ('slide-out-rear', 'slide-out-side', 'stand-up', 'stand-up-knee-brace', 'none')),
  ADD CONSTRAINT "build_sheet_fenders_check" CHECK ("fenders" IN ('double-broke', 'teardrop', 'drive-over', 'none')),
  ADD CONSTRAINT "build_sheet_masses_check" CHECK (
    "gvwr_kg" > 0 AND "gvwr_kg" <= 200000
    AND "empty_mass_kg" > 0 AND "empty_mass_kg" <= 200000
    AND "coupler_rating_kg" > 0 AND "coupler_rating_kg" <= 200000
    AND "chain_break_kg" > 0 AND "chain_break_kg" <= 200000
    AND "jack_lift_kg" > 0 AND "jack_lift_kg" <= 200000
    AND "jack_support_kg" > 0 AND "jack_support_kg" <= 200000),
  ADD CONSTRAINT "build_sheet_plate_cold_pressure_kpa_check" CHECK ("plate_cold_pressure_kpa" > 0 AND "plate_cold_pressure_kpa" <= 2000),
  -- An empty trailer that is heavy behind its axles lifts its tongue, so the force may be negative.
  ADD CONSTRAINT "build_sheet_tongue_forces_check" CHECK (
    "empty_tongue_n" BETWEEN -1000000 AND 1000000
    AND "coupler_tongue_n" > 0 AND "coupler_tongue_n" <= 1000000),
  -- Balls run from 1-7/8 in (0.0476 m) to 3 in (0.0762 m), lunette rings to 4 in (0.1016 m); common practice, no source.
  ADD CONSTRAINT "build_sheet_ball_size_m_check" CHECK ("ball_size_m" BETWEEN 0.03 AND 0.12),
  ADD CONSTRAINT "build_sheet_lengths_check" CHECK (
    "deck_length_m" > 0 AND "deck_length_m" <= 50
    AND "deck_width_m" > 0 AND "deck_width_m" <= 10
    AND "deck_height_m" > 0 AND "deck_height_m" <= 5
    AND "tilt_length_m" > 0 AND "tilt_length_m" <= 50
    AND "deck_front_from_coupler_m" BETWEEN -10 AND 50
    AND "plank_thickness_m" > 0 AND "plank_thickness_m" <= 0.5
    AND "plank_width_m" > 0 AND "plank_width_m" <= 2
    AND "crossmember_spacing_m" > 0 AND "crossmember_spacing_m" <= 5
    AND "frame_depth_m" > 0 AND "frame_depth_m" <= 2
    AND "bed_depth_m" > 0 AND "bed_depth_m" <= 2
    AND "dovetail_m" BETWEEN 0 AND 10
    AND "fender_clear_width_m" > 0 AND "fender_clear_width_m" <= 10),
  ADD CONSTRAINT "build_sheet_tilt_inside_deck_check" CHECK ("tilt_length_m" <= "deck_length_m" + 0.01),
  ADD CONSTRAINT "build_sheet_jack_count_check" CHECK ("jack_count" BETWEEN 0 AND 8),
  ADD CONSTRAINT "build_sheet_nut_torque_nm_check" CHECK ("nut_torque_nm" > 0 AND "nut_torque_nm" <= 5000),
  ADD CONSTRAINT "build_sheet_withdrawn_check" CHECK (NOT "withdrawn" OR "corrects_id" IS NOT NULL),
  ADD CONSTRAINT "build_sheet_door_check" CHECK ("door" IN ('page', 'api', 'seed', 'mail', 'job', 'import'));

ALTER TABLE "build_axle"
  ADD CONSTRAINT "build_axle_number_check" CHECK ("number" BETWEEN 1 AND 8),
  ADD CONSTRAINT "build_axle_ratings_check" CHECK ("gawr_kg" > 0 AND "gawr_kg" <= 50000 AND "rating_kg" > 0 AND "rating_kg" <= 50000),
  ADD CONSTRAINT "build_axle_from_coupler_m_check" CHECK ("from_coupler_m" > 0 AND "from_coupler_m" <= 50),
  ADD CONSTRAINT "build_axle_brakes_check" CHECK ("brakes" IN ('electric', 'hydraulic', 'surge', 'none')),
  ADD CONSTRAINT "build_axle_lubricant_check" CHECK ("lubricant" IN ('grease', 'oil')),
  ADD CONSTRAINT "build_axle_wheels_per_side_check" CHECK ("wheels_per_side" IN (1, 2));

ALTER TABLE "part"
  ADD CONSTRAINT "part_kind_check" CHECK ("kind" IN ('tire', 'hub-bearings', 'brake-set', 'deck', 'coupler', 'jack', 'battery', 'lamp-set')),
  ADD CONSTRAINT "part_position_check" CHECK ("position" ~ '^([1-9]([LR][IO]?)?|spare)$'),
  ADD CONSTRAINT "part_removed_after_fitted_check" CHECK ("removed_on" >= "fitted_on"),
  ADD CONSTRAINT "part_tire_kind_check" CHECK ("tire_kind" IN ('ST', 'LT', 'passenger', 'truck')),
  -- The published table of load indices runs from 0 to 279.
  ADD CONSTRAINT "part_load_index_check" CHECK ("load_index_single" BETWEEN 0 AND 279 AND "load_index_dual" BETWEEN 0 AND 279),
  ADD CONSTRAINT "part_max_load_check" CHECK ("max_load_single_kg" > 0 AND "max_load_single_kg" <= 50000 AND "max_load_dual_kg" > 0 AND "max_load_dual_kg" <= 50000),
  ADD CONSTRAINT "part_max_cold_pressure_kpa_check" CHECK ("max_cold_pressure_kpa" > 0 AND "max_cold_pressure_kpa" <= 2000),
  ADD CONSTRAINT "part_only_tires_have_marks_check" CHECK ("kind" = 'tire' OR num_nonnulls("tire_size", "tire_kind", "load_index_single", "load_index_dual", "max_load_single_kg", "max_load_dual_kg", "load_range", "max_cold_pressure_kpa", "date_code") = 0),
  ADD CONSTRAINT "part_cost_cents_check" CHECK ("cost_cents" >= 0),
  ADD CONSTRAINT "part_withdrawn_check" CHECK (NOT "withdrawn" OR "corrects_id" IS NOT NULL),
  ADD CONSTRAINT "part_door_check" CHECK ("door" IN ('page', 'api', 'seed', 'mail', 'job', 'import'));

ALTER TABLE "machine"
  ADD CONSTRAINT "machine_name_check" CHECK (btrim("name") <> ''),
  ADD CONSTRAINT "machine_mass_kg_check" CHECK ("mass_kg" > 0 AND "mass_kg" <= 200000),
  ADD CONSTRAINT "machine_mass_basis_check" CHECK ("mass_basis" IN ('weighed', 'stated', 'assumed')),
  ADD CONSTRAINT "machine_size_check" CHECK ("length_m" > 0 AND "length_m" <= 50 AND "width_m" > 0 AND "width_m" <= 20 AND "balance_point_m" BETWEEN 0 AND 50),
  ADD CONSTRAINT "machine_contact_check" CHECK ("contact" IN ('tires', 'rubber-tracks', 'steel-tracks', 'small-wheels', 'pads')),
  ADD CONSTRAINT "machine_replaces_another_check" CHECK ("replaces_machine_id" <> "id");

ALTER TABLE "tow_vehicle"
  ADD CONSTRAINT "tow_vehicle_name_check" CHECK (btrim("name") <> ''),
  ADD CONSTRAINT "tow_vehicle_masses_check" CHECK (
    "gvwr_kg" > 0 AND "gvwr_kg" <= 200000
    AND "mass_kg" > 0 AND "mass_kg" <= 200000
    AND "gcwr_kg" > 0 AND "gcwr_kg" <= 200000
    AND "hitch_rating_kg" > 0 AND "hitch_rating_kg" <= 200000),
  ADD CONSTRAINT "tow_vehicle_hitch_tongue_n_check" CHECK ("hitch_tongue_n" > 0 AND "hitch_tongue_n" <= 1000000),
  ADD CONSTRAINT "tow_vehicle_ball_size_m_check" CHECK ("ball_size_m" BETWEEN 0.03 AND 0.12);

ALTER TABLE "trip"
  ADD CONSTRAINT "trip_ended_after_started_check" CHECK ("ended_on" >= "started_on"),
  ADD CONSTRAINT "trip_distance_km_check" CHECK ("distance_km" BETWEEN 0 AND 100000),
  ADD CONSTRAINT "trip_balance_point_m_check" CHECK ("balance_point_m" BETWEEN -10 AND 50),
  ADD CONSTRAINT "trip_scale_gross_kg_check" CHECK ("scale_gross_kg" > 0 AND "scale_gross_kg" <= 200000),
  ADD CONSTRAINT "trip_scale_tongue_n_check" CHECK ("scale_tongue_n" BETWEEN -1000000 AND 1000000),
  ADD CONSTRAINT "trip_scale_axle_n_check" CHECK (0 <= ALL ("scale_axle_n") AND 1000000 >= ALL ("scale_axle_n") AND array_position("scale_axle_n", NULL) IS NULL),
  ADD CONSTRAINT "trip_roads_check" CHECK ("roads" <@ ARRAY['salt', 'gravel', 'water'] AND ("roads_known" OR "roads" = '{}')),
  ADD CONSTRAINT "trip_withdrawn_check" CHECK (NOT "withdrawn" OR "corrects_id" IS NOT NULL),
  ADD CONSTRAINT "trip_door_check" CHECK ("door" IN ('page', 'api', 'seed', 'mail', 'job', 'import'));

ALTER TABLE "trip_cargo"
  ADD CONSTRAINT "trip_cargo_place_check" CHECK ("place" >= 0),
  ADD CONSTRAINT "trip_cargo_mass_kg_check" CHECK ("mass_kg" BETWEEN 0 AND 200000),
  ADD CONSTRAINT "trip_cargo_basis_check" CHECK ("basis" IN ('weighed', 'stated', 'assumed')),
  ADD CONSTRAINT "trip_cargo_remedy_check" CHECK ("remedy" IN ('leave-off', 'swap', 'wash'));

ALTER TABLE "meter_reading"
  ADD CONSTRAINT "meter_reading_shown_km_check" CHECK ("shown_km" BETWEEN 0 AND 20000000),
  ADD CONSTRAINT "meter_reading_meter_span_km_check" CHECK ("meter_span_km" > 0 AND "meter_span_km" <= 20000000),
  ADD CONSTRAINT "meter_reading_kind_check" CHECK ("kind" IN ('read', 'rolled-over', 'replaced')),
  ADD CONSTRAINT "meter_reading_withdrawn_check" CHECK (NOT "withdrawn" OR "corrects_id" IS NOT NULL),
  ADD CONSTRAINT "meter_reading_door_check" CHECK ("door" IN ('page', 'api', 'seed', 'mail', 'job', 'import'));

ALTER TABLE "job"
  ADD CONSTRAINT "job_name_check" CHECK (btrim("name") <> ''),
  ADD CONSTRAINT "job_ends_after_start_check" CHECK ("ends_on" >= "starts_on"),
  ADD CONSTRAINT "job_state_check" CHECK ("state" IN ('booked', 'cancelled', 'done')),
  ADD CONSTRAINT "job_work_check" CHECK ("work" IN ('own', 'hire')),
  ADD CONSTRAINT "job_distance_km_check" CHECK ("distance_km" BETWEEN 0 AND 100000),
  ADD CONSTRAINT "job_balance_point_m_check" CHECK ("balance_point_m" BETWEEN -10 AND 50),
  ADD CONSTRAINT "job_scale_gross_kg_check" CHECK ("scale_gross_kg" > 0 AND "scale_gross_kg" <= 200000),
  ADD CONSTRAINT "job_scale_tongue_n_check" CHECK ("scale_tongue_n" BETWEEN -1000000 AND 1000000),
  ADD CONSTRAINT "job_scale_axle_n_check" CHECK (0 <= ALL ("scale_axle_n") AND 1000000 >= ALL ("scale_axle_n") AND array_position("scale_axle_n", NULL) IS NULL),
  ADD CONSTRAINT "job_driver_cdl_check" CHECK ("driver_cdl" IN ('A', 'B', 'none') AND "driver_name" IS NOT NULL OR "driver_cdl" IS NULL),
  ADD CONSTRAINT "job_door_check" CHECK ("door" IN ('page', 'api', 'seed', 'mail', 'job', 'import'));

ALTER TABLE "job_cargo"
  ADD CONSTRAINT "job_cargo_place_check" CHECK ("place" >= 0),
  ADD CONSTRAINT "job_cargo_mass_kg_check" CHECK ("mass_kg" BETWEEN 0 AND 200000),
  ADD CONSTRAINT "job_cargo_basis_check" CHECK ("basis" IN ('weighed', 'stated', 'assumed')),
  ADD CONSTRAINT "job_cargo_remedy_check" CHECK ("remedy" IN ('leave-off', 'swap', 'wash'));

ALTER TABLE "check_kind"
  ADD CONSTRAINT "check_kind_code_check" CHECK ("code" ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
  ADD CONSTRAINT "check_kind_name_check" CHECK (btrim("name") <> ''),
  ADD CONSTRAINT "check_kind_blocks_check" CHECK ("blocks" IN ('all-jobs', 'commercial-jobs', 'none')),
  ADD CONSTRAINT "check_kind_lead_days_check" CHECK ("lead_days" BETWEEN 0 AND 366),
  ADD CONSTRAINT "check_kind_lists_check" CHECK (jsonb_typeof("triggers") = 'array' AND jsonb_typeof("applies_to") = 'object' AND jsonb_typeof("work") = 'object' AND jsonb_typeof("lines") = 'array' AND jsonb_typeof("proof") = 'object');

ALTER TABLE "check_record"
  ADD CONSTRAINT "check_record_outcome_check" CHECK ("outcome" IN ('pass', 'fail')),
  ADD CONSTRAINT "check_record_by_name_check" CHECK (btrim("by_name") <> ''),
  ADD CONSTRAINT "check_record_inspected_by_check" CHECK ("inspected_by" IN ('own', 'state')),
  ADD CONSTRAINT "check_record_cost_cents_check" CHECK ("cost_cents" >= 0),
  ADD CONSTRAINT "check_record_withdrawn_check" CHECK (NOT "withdrawn" OR "corrects_id" IS NOT NULL),
  ADD CONSTRAINT "check_record_door_check" CHECK ("door" IN ('page', 'api', 'seed', 'mail', 'job', 'import'));

ALTER TABLE "checked_line"
  ADD CONSTRAINT "checked_line_place_check" CHECK ("place" >= 0),
  ADD CONSTRAINT "checked_line_result_check" CHECK ("result" IN ('ok', 'bad')),
  ADD CONSTRAINT "checked_line_quantity_check" CHECK ("quantity" IN ('cold-pressure-kpa', 'tread-depth-mm', 'lining-mm', 'end-play-mm', 'battery-v', 'torque-nm', 'temperature-c', 'probe-depth-mm')),
  -- Nothing colder than absolute zero; every other quantity we measure starts at nothing.
  ADD CONSTRAINT "checked_line_value_check" CHECK (("quantity" IS NULL) = ("value" IS NULL) AND "value" BETWEEN CASE WHEN "quantity" = 'temperature-c' THEN -273.15 ELSE 0 END AND 100000);

ALTER TABLE "check_photo"
  ADD CONSTRAINT "check_photo_media_type_check" CHECK ("media_type" IN ('image/jpeg', 'image/png', 'image/webp')),
  ADD CONSTRAINT "check_photo_bytes_check" CHECK (octet_length("bytes") > 0);

ALTER TABLE "hold"
  ADD CONSTRAINT "hold_reason_check" CHECK (btrim("reason") <> ''),
  ADD CONSTRAINT "hold_lifted_after_opened_check" CHECK ("lifted_on" >= "opened_on"),
  -- Only a recorded repair or a named person lifts a hold.
  ADD CONSTRAINT "hold_lifted_by_somebody_check" CHECK (CASE WHEN "lifted_on" IS NULL
    THEN num_nonnulls("lifted_by", "lifted_by_name", "lift_reason", "lift_check_record_id") = 0
    ELSE num_nonnulls("lifted_by_name", "lift_check_record_id") > 0 END);

ALTER TABLE "trailer_result"
  ADD CONSTRAINT "trailer_result_readiness_check" CHECK ("readiness" IN ('ready', 'due', 'down', 'gone')),
  ADD CONSTRAINT "trailer_result_counts_check" CHECK ("stop_flags" >= 0 AND "limit_flags" >= 0 AND "watch_flags" >= 0 AND "overdue" >= 0),
  ADD CONSTRAINT "trailer_result_wake_on_check" CHECK ("wake_on" > "as_of");

ALTER TABLE "due_result"
  ADD CONSTRAINT "due_result_state_check" CHECK ("state" IN ('overdue', 'due-soon', 'later', 'never-done', 'unknown'));

ALTER TABLE "flag_result"
  ADD CONSTRAINT "flag_result_severity_check" CHECK ("severity" IN ('stop', 'limit', 'watch'));

ALTER TABLE "notice"
  ADD CONSTRAINT "notice_kind_check" CHECK ("kind" IN ('day', 'stop', 'address-failed', 'invitation', 'reset')),
  ADD CONSTRAINT "notice_state_check" CHECK ("state" IN ('waiting', 'sent', 'dead', 'bounced', 'cancelled')),
  ADD CONSTRAINT "notice_attempts_check" CHECK ("attempts" >= 0),
  ADD CONSTRAINT "notice_sent_at_check" CHECK ("state" <> 'sent' OR "sent_at" IS NOT NULL);

ALTER TABLE "notice_answer"
  ADD CONSTRAINT "notice_answer_answer_check" CHECK ("answer" IN ('done', 'later', 'not-mine', 'already-done'));

ALTER TABLE "audit_entry"
  ADD CONSTRAINT "audit_entry_door_check" CHECK ("door" IN ('page', 'api', 'seed', 'mail', 'job', 'import'));

-- The roles that the service works as. They cannot log in; the service's connections take them on at start
-- (`-c role=...`), so that row level security holds even where the connection string names an owner or superuser.
-- Roles belong to the whole server: another database, or another copy of the service, may have made them already.
DO $$
DECLARE
  wanted text;
  made boolean;
BEGIN
  FOREACH wanted IN ARRAY ARRAY['axlebook_service', 'axlebook_auth'] LOOP
    made := false;
    BEGIN
      IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = wanted) THEN
        EXECUTE format('CREATE ROLE %I NOLOGIN', wanted);
        made := true;
      END IF;
    EXCEPTION WHEN duplicate_object OR unique_violation THEN
      NULL; -- Another copy made it at the same moment.
    END;
    IF EXISTS (SELECT FROM pg_roles WHERE rolname = wanted AND (rolsuper OR rolbypassrls)) THEN
      RAISE EXCEPTION 'Role % may pass row level security by, so yards would not be kept apart. Run: ALTER ROLE % NOSUPERUSER NOBYPASSRLS', wanted, wanted;
    END IF;
    -- A superuser may take on any role. Whoever makes one does not belong to it by that alone (Postgres 16 and later).
    IF NOT (SELECT rolsuper FROM pg_roles WHERE rolname = current_user)
      AND (made OR NOT pg_has_role(current_user, wanted, 'MEMBER')) THEN
      EXECUTE format('GRANT %I TO %I', wanted, current_user);
    END IF;
  END LOOP;
END
$$;

GRANT USAGE ON SCHEMA "public" TO "axlebook_service", "axlebook_auth";

-- Sign-in tables: the sign-in library alone. Session tokens stand there in clear.
GRANT SELECT, INSERT, UPDATE, DELETE ON "person", "session", "sign_in_account", "verification", "rate_limit" TO "axlebook_auth";

-- Facts: written once, mended by a later row.
GRANT SELECT, INSERT ON "build_sheet", "build_axle", "part", "trip", "trip_cargo", "meter_reading", "check_record", "checked_line", "check_photo", "hold", "notice_item", "notice_answer", "audit_entry" TO "axlebook_service";
GRANT UPDATE ("removed_on") ON "part" TO "axlebook_service";
GRANT UPDATE ("lifted_on", "lifted_by", "lifted_by_name", "lift_reason", "lift_check_record_id") ON "hold" TO "axlebook_service";

-- Things that change while they live; the audit log keeps what they were.
GRANT SELECT, INSERT, UPDATE ON "yard", "membership", "invitation", "api_token", "trailer", "machine", "tow_vehicle", "job", "check_kind", "notice" TO "axlebook_service";
GRANT SELECT, INSERT, DELETE ON "job_cargo" TO "axlebook_service";

-- Results: thrown away and rebuilt.
GRANT SELECT, INSERT, UPDATE, DELETE ON "trailer_result", "due_result", "flag_result" TO "axlebook_service";

-- One yard at a time. Without a yard set, the setting is empty and no row matches.
DO $$
DECLARE
  kept text;
BEGIN
  FOREACH kept IN ARRAY ARRAY[
    'membership', 'invitation', 'api_token', 'trailer', 'build_sheet', 'build_axle', 'part', 'machine', 'tow_vehicle',
    'trip', 'trip_cargo', 'meter_reading', 'job', 'job_cargo', 'check_kind', 'check_record', 'checked_line',
    'check_photo', 'hold', 'trailer_result', 'due_result', 'flag_result', 'notice', 'notice_item', 'notice_answer',
    'audit_entry'
  ] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', kept);
    EXECUTE format('CREATE POLICY "own_yard" ON %I FOR ALL TO "axlebook_service" USING ("yard_id" = (SELECT nullif(current_setting(''app.yard'', true), '''')::uuid))', kept);
  END LOOP;
END
$$;

ALTER TABLE "yard" ENABLE ROW LEVEL SECURITY;
CREATE POLICY "own_yard" ON "yard" FOR ALL TO "axlebook_service" USING ("id" = (SELECT nullif(current_setting('app.yard', true), '')::uuid));

-- A part comes off once, and a hold is lifted once; a wrong date is mended by a later row.
CREATE POLICY "removed_once" ON "part" AS RESTRICTIVE FOR UPDATE TO "axlebook_service" USING ("removed_on" IS NULL) WITH CHECK (true);
CREATE POLICY "lifted_once" ON "hold" AS RESTRICTIVE FOR UPDATE TO "axlebook_service" USING ("lifted_on" IS NULL) WITH CHECK (true);

-- The few questions that cross yards. They run as the owner, answer with no more than the question needs, and name
-- every table in full, so that nothing a caller sets can lead them elsewhere.

CREATE FUNCTION "yard_ids"() RETURNS SETOF uuid
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog
  AS $$ SELECT id FROM public.yard ORDER BY id $$;

-- Yards in which some trailer reads differently from the day that it is there now. Like the next question it goes by
-- each yard's own clock, so one tick of the timer serves yards of every zone.
CREATE FUNCTION "yards_to_wake"(at timestamptz) RETURNS SETOF uuid
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog
  AS $$ SELECT y.id FROM public.yard y
        WHERE EXISTS (SELECT FROM public.trailer_result r
                      WHERE r.yard_id = y.id AND r.wake_on <= timezone(y.time_zone, at)::date)
        ORDER BY y.id $$;

-- Yards in which it is past the plan hour of a day that nobody has planned. A day missed altogether is not asked for
-- again: letters of yesterday help nobody, and today's say whatever is still open.
CREATE FUNCTION "yards_to_plan"(at timestamptz) RETURNS SETOF uuid
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog
  AS $$ SELECT y.id FROM public.yard y
        WHERE extract(hour FROM timezone(y.time_zone, at)) >= y.plan_hour
          AND (y.planned_on IS NULL OR y.planned_on < timezone(y.time_zone, at)::date)
        ORDER BY y.id $$;

CREATE FUNCTION "yards_with_waiting_notices"(at timestamptz) RETURNS SETOF uuid
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog
  AS $$ SELECT DISTINCT n.yard_id FROM public.notice n WHERE n.state = 'waiting' AND n.not_before <= at $$;

-- For sign-in: where a person may work.
CREATE FUNCTION "memberships_of"(person uuid) RETURNS TABLE ("yard_id" uuid, "yard_name" text, "role" text, "left_on" date)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog
  AS $$ SELECT m.yard_id, y.name, m.role, m.left_on FROM public.membership m JOIN public.yard y ON y.id = m.yard_id
        WHERE m.person_id = person ORDER BY m.created_at, m.yard_id $$;

-- For whoever shows a secret: only its hash leads to a row, and to one row.
CREATE FUNCTION "api_token_of"(hash text) RETURNS TABLE ("id" uuid, "yard_id" uuid, "person_id" uuid)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog
  AS $$ SELECT t.id, t.yard_id, t.person_id FROM public.api_token t WHERE t.token_hash = hash AND t.revoked_at IS NULL $$;

CREATE FUNCTION "invitation_of"(hash text) RETURNS TABLE ("id" uuid, "yard_id" uuid)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog
  AS $$ SELECT i.id, i.yard_id FROM public.invitation i WHERE i.token_hash = hash $$;

REVOKE EXECUTE ON FUNCTION "yard_ids"(), "yards_to_wake"(timestamptz), "yards_to_plan"(timestamptz), "yards_with_waiting_notices"(timestamptz), "memberships_of"(uuid), "api_token_of"(text), "invitation_of"(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION "yard_ids"(), "yards_to_wake"(timestamptz), "yards_to_plan"(timestamptz), "yards_with_waiting_notices"(timestamptz), "memberships_of"(uuid), "api_token_of"(text), "invitation_of"(text) TO "axlebook_service";
GRANT EXECUTE ON FUNCTION "memberships_of"(uuid) TO "axlebook_auth";
