-- What older rules kept lacks what newer ones say of it (what clears a flag, the range of a due date, wear, deck and hub
-- lives). Facts stay as they are; what was worked out of them goes, and each trailer wakes at the first tick.
DELETE FROM "flag_result";
DELETE FROM "due_result";
UPDATE "trailer_result" SET "wake_on" = "as_of", "as_of" = "as_of" - 1;
