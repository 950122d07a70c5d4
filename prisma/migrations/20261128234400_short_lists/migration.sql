-- The short lists of the Gate: what comes back, what is held, how many are ready. Without these each reads the whole yard.
-- CreateIndex
CREATE INDEX "job_yard_id_ends_on_idx" ON "job"("yard_id", "ends_on") WHERE (state = 'booked');

-- CreateIndex
CREATE INDEX "hold_yard_id_opened_on_idx" ON "hold"("yard_id", "opened_on") WHERE (lifted_on is null);

-- CreateIndex
CREATE INDEX "trailer_result_yard_id_readiness_idx" ON "trailer_result"("yard_id", "readiness");
