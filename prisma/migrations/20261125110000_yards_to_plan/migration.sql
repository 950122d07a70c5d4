-- Which day's letters a yard has planned, and which yards the timer has to look at, each by its own
-- clock. A letter may also go to somebody who is only invited, and so is no person yet.

ALTER TABLE "yard" ADD COLUMN IF NOT EXISTS "planned_on" DATE;
ALTER TABLE "notice" ALTER COLUMN "person_id" DROP NOT NULL;

-- One yard with a zone that Postgres does not know would make the question fail for all of them.
-- (Reading a fixed instant in the zone raises an error for an unknown one, so nothing needs to be compared.)
ALTER TABLE "yard"
  ADD CONSTRAINT "yard_time_zone_known_check" CHECK (timezone("time_zone", timestamptz '2000-01-01 00:00:00+00') IS NOT NULL);

-- Yards in which it is past the plan hour of a day that nobody has planned. A day missed altogether is not asked for
-- again: letters of yesterday help nobody, and today's say whatever is still open.
CREATE FUNCTION "yards_to_plan"(at timestamptz) RETURNS SETOF uuid
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog
  AS $$ SELECT y.id FROM public.yard y
        WHERE extract(hour FROM timezone(y.time_zone, at)) >= y.plan_hour
          AND (y.planned_on IS NULL OR y.planned_on < timezone(y.time_zone, at)::date)
        ORDER BY y.id $$;

-- Yards in which some trailer reads differently from the day that it is there now. Takes the place of a question that
-- asked with one date for yards of every zone.
DROP FUNCTION "yards_with_wakes"(date);
CREATE FUNCTION "yards_to_wake"(at timestamptz) RETURNS SETOF uuid
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog
  AS $$ SELECT y.id FROM public.yard y
        WHERE EXISTS (SELECT FROM public.trailer_result r
                      WHERE r.yard_id = y.id AND r.wake_on <= timezone(y.time_zone, at)::date)
        ORDER BY y.id $$;

REVOKE EXECUTE ON FUNCTION "yards_to_plan"(timestamptz), "yards_to_wake"(timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION "yards_to_plan"(timestamptz), "yards_to_wake"(timestamptz) TO "axlebook_service";
