-- What springs, decks, bearings, ramps and tie-downs are worked out from, and what each trailer's decks told of the life
-- of decks. Everything older stays unknown.

-- AlterTable
ALTER TABLE "yard" ADD COLUMN     "decay_index" DOUBLE PRECISION,
ADD COLUMN     "deck_life_years" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "build_sheet" ADD COLUMN     "deck_board_count" INTEGER,
ADD COLUMN     "deck_pivot_from_coupler_m" DOUBLE PRECISION,
ADD COLUMN     "deck_treated" BOOLEAN,
ADD COLUMN     "deck_wood" TEXT,
ADD COLUMN     "deck_wood_grade" TEXT,
ADD COLUMN     "hitch_level_height_m" DOUBLE PRECISION,
ADD COLUMN     "jack_from_coupler_m" DOUBLE PRECISION,
ADD COLUMN     "ramp_length_m" DOUBLE PRECISION,
ADD COLUMN     "ramp_rating_kg" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "build_axle" ADD COLUMN     "spring_rate_n_per_m" DOUBLE PRECISION,
ADD COLUMN     "track_m" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "part" ADD COLUMN     "bearing_inner" TEXT,
ADD COLUMN     "bearing_outer" TEXT,
ADD COLUMN     "removed_for" TEXT,
ADD COLUMN     "speed_symbol" TEXT;

-- AlterTable
ALTER TABLE "machine" ADD COLUMN     "clearance_m" DOUBLE PRECISION,
ADD COLUMN     "contact_count" INTEGER,
ADD COLUMN     "contact_length_m" DOUBLE PRECISION,
ADD COLUMN     "contact_width_m" DOUBLE PRECISION,
ADD COLUMN     "wheelbase_m" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "tow_vehicle" ADD COLUMN     "ball_height_m" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "trip" ADD COLUMN     "hitch_height_m" DOUBLE PRECISION,
ADD COLUMN     "off_centre_m" DOUBLE PRECISION,
ADD COLUMN     "tie_downs" JSONB;

-- AlterTable
ALTER TABLE "trip_cargo" ADD COLUMN     "from_coupler_m" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "job" ADD COLUMN     "hitch_height_m" DOUBLE PRECISION,
ADD COLUMN     "off_centre_m" DOUBLE PRECISION,
ADD COLUMN     "tie_downs" JSONB;

-- AlterTable
ALTER TABLE "job_cargo" ADD COLUMN     "from_coupler_m" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "trailer_result" ADD COLUMN     "deck_lives" JSONB NOT NULL DEFAULT '[]';

ALTER TABLE "yard"
  ADD CONSTRAINT "yard_decay_index_check" CHECK ("decay_index" BETWEEN 0 AND 1000),
  ADD CONSTRAINT "yard_deck_life_years_check" CHECK ("deck_life_years" > 0 AND "deck_life_years" <= 200);

ALTER TABLE "build_sheet"
  ADD CONSTRAINT "build_sheet_deck_wood_check" CHECK ("deck_wood" IN ('southern-pine', 'douglas-fir', 'white-oak', 'red-oak', 'hem-fir', 'spruce-pine-fir', 'apitong', 'other')),
  ADD CONSTRAINT "build_sheet_deck_wood_grade_check" CHECK ("deck_wood_grade" IN ('select-structural', 'no-1', 'no-2', 'no-3')),
  ADD CONSTRAINT "build_sheet_deck_board_count_check" CHECK ("deck_board_count" BETWEEN 1 AND 200),
  ADD CONSTRAINT "build_sheet_places_check" CHECK (
    "hitch_level_height_m" > 0 AND "hitch_level_height_m" <= 3
    AND "deck_pivot_from_coupler_m" BETWEEN 0 AND 50
    AND "ramp_length_m" > 0 AND "ramp_length_m" <= 10
    AND "jack_from_coupler_m" BETWEEN 0 AND 50),
  ADD CONSTRAINT "build_sheet_ramp_rating_kg_check" CHECK ("ramp_rating_kg" > 0 AND "ramp_rating_kg" <= 200000);

ALTER TABLE "build_axle"
  ADD CONSTRAINT "build_axle_spring_rate_n_per_m_check" CHECK ("spring_rate_n_per_m" > 0 AND "spring_rate_n_per_m" <= 100000000),
  ADD CONSTRAINT "build_axle_track_m_check" CHECK ("track_m" > 0 AND "track_m" <= 10);

ALTER TABLE "part"
  ADD CONSTRAINT "part_removed_for_check" CHECK ("removed_for" IN ('worn-out', 'damaged', 'precaution', 'moved')),
  ADD CONSTRAINT "part_removed_for_needs_day_check" CHECK ("removed_for" IS NULL OR "removed_on" IS NOT NULL),
  ADD CONSTRAINT "part_speed_symbol_check" CHECK ("speed_symbol" ~ '^([A-Z]|A[1-8])$'),
  ADD CONSTRAINT "part_bearings_check" CHECK (("kind" = 'hub-bearings' OR num_nonnulls("bearing_inner", "bearing_outer") = 0) AND btrim("bearing_inner") <> '' AND btrim("bearing_outer") <> ''),
  DROP CONSTRAINT "part_only_tires_have_marks_check",
  ADD CONSTRAINT "part_only_tires_have_marks_check" CHECK ("kind" = 'tire' OR num_nonnulls("tire_size", "tire_kind", "load_index_single", "load_index_dual", "max_load_single_kg", "max_load_dual_kg", "load_range", "speed_symbol", "max_cold_pressure_kpa", "date_code") = 0);

ALTER TABLE "machine"
  ADD CONSTRAINT "machine_contact_size_check" CHECK (
    "contact_count" BETWEEN 1 AND 100
    AND "contact_length_m" > 0 AND "contact_length_m" <= 50
    AND "contact_width_m" > 0 AND "contact_width_m" <= 20
    AND "wheelbase_m" > 0 AND "wheelbase_m" <= 50
    AND "clearance_m" BETWEEN 0 AND 5);

ALTER TABLE "tow_vehicle"
  ADD CONSTRAINT "tow_vehicle_ball_height_m_check" CHECK ("ball_height_m" > 0 AND "ball_height_m" <= 3);

-- How the load rode. An item of the list of tie-downs that is not as it should be is missing from the right side.
DO $$
DECLARE
  haul text;
BEGIN
  FOREACH haul IN ARRAY ARRAY['trip', 'job'] LOOP
    EXECUTE format('ALTER TABLE %I
      ADD CONSTRAINT %I CHECK ("hitch_height_m" > 0 AND "hitch_height_m" <= 3),
      ADD CONSTRAINT %I CHECK ("off_centre_m" BETWEEN -5 AND 5),
      ADD CONSTRAINT %I CHECK (CASE WHEN jsonb_typeof("tie_downs") = ''array'' THEN
        jsonb_array_length("tie_downs") = jsonb_array_length(jsonb_path_query_array("tie_downs",
          ''$[*] ? (@.count >= 0 && @.count <= 1000 && (@.way == "direct" || @.way == "over")
            && (@.workingLoadKg == null || @.workingLoadKg > 0 && @.workingLoadKg <= 200000))''))
        ELSE "tie_downs" IS NULL END)',
      haul, haul || '_hitch_height_m_check', haul || '_off_centre_m_check', haul || '_tie_downs_check');
    EXECUTE format('ALTER TABLE %I ADD CONSTRAINT %I CHECK ("from_coupler_m" BETWEEN -10 AND 50)',
      haul || '_cargo', haul || '_cargo_from_coupler_m_check');
  END LOOP;
END
$$;

ALTER TABLE "checked_line"
  DROP CONSTRAINT "checked_line_quantity_check",
  ADD CONSTRAINT "checked_line_quantity_check" CHECK ("quantity" IN ('cold-pressure-kpa', 'tread-depth-mm', 'lining-mm', 'magnet-mm', 'magnet-a', 'chain-mm', 'end-play-mm', 'battery-v', 'torque-nm', 'temperature-c', 'probe-depth-mm', 'board-sag-mm'));

ALTER TABLE "trailer_result"
  ADD CONSTRAINT "trailer_result_deck_lives_check" CHECK (jsonb_typeof("deck_lives") = 'array');

-- Why a part came off is said with the day that it came off.
GRANT UPDATE ("removed_for") ON "part" TO "axlebook_service";

-- The decks of a yard are few among its parts, and are asked for with every trailer.
CREATE INDEX "part_yard_id_idx" ON "part"("yard_id") WHERE (kind = 'deck');
