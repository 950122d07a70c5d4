-- A check sheet is signed: by a name typed under it, or by a signature drawn on the phone. Older ones were not.

-- AlterTable
ALTER TABLE "check_record" ADD COLUMN     "signed_name" TEXT;

-- AlterTable
ALTER TABLE "check_photo" ADD COLUMN     "is_signature" BOOLEAN NOT NULL DEFAULT false;

ALTER TABLE "check_record"
  ADD CONSTRAINT "check_record_signed_name_check" CHECK (btrim("signed_name") <> '');

-- One sheet carries one signature.
CREATE UNIQUE INDEX "check_photo_yard_id_check_record_id_key" ON "check_photo"("yard_id", "check_record_id") WHERE (is_signature);
