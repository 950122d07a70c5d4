-- Hired trailers handed out and taken back, with what was seen of them both ways.

-- AlterTable
ALTER TABLE "hold" ADD COLUMN     "handover_id" UUID;

-- CreateTable
CREATE TABLE "handover" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "trailer_id" UUID NOT NULL,
    "job_id" UUID,
    "way" TEXT NOT NULL,
    "out_id" UUID,
    "handed_on" DATE NOT NULL,
    "customer" TEXT NOT NULL,
    "by_person_id" UUID,
    "by_name" TEXT NOT NULL,
    "seen" JSONB NOT NULL DEFAULT '[]',
    "hitch" JSONB,
    "signed_name" TEXT,
    "signed_strokes" JSONB NOT NULL DEFAULT '[]',
    "corrects_id" UUID,
    "withdrawn" BOOLEAN NOT NULL DEFAULT false,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "recorded_by" UUID,
    "door" TEXT NOT NULL,

    CONSTRAINT "handover_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "handover_photo" (
    "id" UUID NOT NULL,
    "yard_id" UUID NOT NULL,
    "handover_id" UUID NOT NULL,
    "place" INTEGER NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "recorded_at" TIMESTAMPTZ(6) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "handover_photo_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "handover_yard_id_trailer_id_out_id_idx" ON "handover"("yard_id", "trailer_id", "out_id");

-- CreateIndex
CREATE UNIQUE INDEX "handover_yard_id_id_key" ON "handover"("yard_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "handover_yard_id_trailer_id_id_key" ON "handover"("yard_id", "trailer_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "handover_yard_id_trailer_id_corrects_id_key" ON "handover"("yard_id", "trailer_id", "corrects_id") WHERE (corrects_id is not null);

-- CreateIndex
CREATE INDEX "handover_photo_yard_id_handover_id_idx" ON "handover_photo"("yard_id", "handover_id");

-- AddForeignKey
ALTER TABLE "hold" ADD CONSTRAINT "hold_yard_id_trailer_id_handover_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "handover_id") REFERENCES "handover"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_yard_id_trailer_id_fkey" FOREIGN KEY ("yard_id", "trailer_id") REFERENCES "trailer"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_yard_id_job_id_fkey" FOREIGN KEY ("yard_id", "job_id") REFERENCES "job"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_yard_id_by_person_id_fkey" FOREIGN KEY ("yard_id", "by_person_id") REFERENCES "membership"("yard_id", "person_id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_yard_id_trailer_id_out_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "out_id") REFERENCES "handover"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_yard_id_trailer_id_corrects_id_fkey" FOREIGN KEY ("yard_id", "trailer_id", "corrects_id") REFERENCES "handover"("yard_id", "trailer_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover_photo" ADD CONSTRAINT "handover_photo_yard_id_handover_id_fkey" FOREIGN KEY ("yard_id", "handover_id") REFERENCES "handover"("yard_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- An item of the list of what was seen that is not as it should be is missing from the right side.
ALTER TABLE "handover"
  ADD CONSTRAINT "handover_way_check" CHECK ("way" IN ('out', 'back')),
  ADD CONSTRAINT "handover_back_ends_a_way_out_check" CHECK ("withdrawn" OR ("way" = 'back') = ("out_id" IS NOT NULL)),
  ADD CONSTRAINT "handover_names_check" CHECK (btrim("customer") <> '' AND btrim("by_name") <> '' AND btrim("signed_name") <> ''),
  ADD CONSTRAINT "handover_seen_check" CHECK (CASE WHEN jsonb_typeof("seen") = 'array' THEN
    jsonb_array_length("seen") = jsonb_array_length(jsonb_path_query_array("seen",
      '$[*] ? ((@.thing == "tire" || @.thing == "wheel" || @.thing == "spare" || @.thing == "lamp" || @.thing == "plug"
          || @.thing == "coupler" || @.thing == "safety-chain" || @.thing == "breakaway" || @.thing == "jack"
          || @.thing == "deck" || @.thing == "fender" || @.thing == "frame" || @.thing == "ramp" || @.thing == "pin"
          || @.thing == "strap" || @.thing == "customer-ball")
        && (@.condition == "sound" || @.condition == "rubbed" || @.condition == "worn" || @.condition == "stiff"
          || @.condition == "bent" || @.condition == "broken" || @.condition == "missing")
        && (@.position == null || @.position like_regex "^.{1,24}$")
        && (@.tire == null || @.tire.type() == "object" && (@.thing == "tire" || @.thing == "spare"))
        && (@.ballSizeM == null || @.ballSizeM > 0 && @.ballSizeM <= 1 && @.thing == "customer-ball"))'))
    ELSE false END),
  ADD CONSTRAINT "handover_hitch_check" CHECK ("hitch" IS NULL OR "way" = 'out' AND jsonb_path_exists("hitch",
    '$ ? (@.ball.type() == "object" && (@.swappedTo == null || @.swappedTo.type() == "object")
      && (@.plug == null || @.plug == "lamps-and-brakes" || @.plug == "lamps-only" || @.plug == "nothing"))')),
  ADD CONSTRAINT "handover_signed_strokes_check" CHECK (CASE WHEN jsonb_typeof("signed_strokes") = 'array' THEN
    jsonb_array_length("signed_strokes") = jsonb_array_length(jsonb_path_query_array("signed_strokes",
      '$[*] ? (@.points.size() > 1)'))
    ELSE false END),
  ADD CONSTRAINT "handover_withdrawn_check" CHECK (NOT "withdrawn" OR "corrects_id" IS NOT NULL),
  ADD CONSTRAINT "handover_door_check" CHECK ("door" IN ('page', 'api', 'seed', 'mail', 'job', 'import'));

ALTER TABLE "handover_photo"
  ADD CONSTRAINT "handover_photo_place_check" CHECK ("place" >= 0),
  ADD CONSTRAINT "handover_photo_media_type_check" CHECK ("media_type" IN ('image/jpeg', 'image/png', 'image/webp')),
  ADD CONSTRAINT "handover_photo_bytes_check" CHECK (octet_length("bytes") > 0);

GRANT SELECT, INSERT ON "handover", "handover_photo" TO "axlebook_service";

DO $$
DECLARE
  kept text;
BEGIN
  FOREACH kept IN ARRAY ARRAY['handover', 'handover_photo'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', kept);
    EXECUTE format('CREATE POLICY "own_yard" ON %I FOR ALL TO "axlebook_service" USING ("yard_id" = (SELECT nullif(current_setting(''app.yard'', true), '''')::uuid))', kept);
  END LOOP;
END
$$;
