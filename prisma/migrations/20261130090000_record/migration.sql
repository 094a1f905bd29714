-- CreateEnum
CREATE TYPE "handover_state" AS ENUM ('offered', 'accepted', 'declined', 'withdrawn');

-- CreateEnum
CREATE TYPE "proposal_state" AS ENUM ('open', 'accepted', 'declined', 'withdrawn');

-- AlterTable
ALTER TABLE "rig" ADD COLUMN     "removed_by" TEXT,
ADD COLUMN     "started_from" JSONB;

-- CreateTable
CREATE TABLE "rig_revision" (
    "rig_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,
    "content" BYTEA NOT NULL,
    "size" INTEGER NOT NULL,
    "seq" BIGINT NOT NULL,
    "note" TEXT NOT NULL,
    "units" INTEGER NOT NULL,
    "counts" JSONB NOT NULL,
    "findings" BYTEA NOT NULL,
    "accepted" JSONB NOT NULL,
    "by" TEXT NOT NULL,
    "by_name" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "rig_revision_pkey" PRIMARY KEY ("rig_id","number")
);

-- CreateTable
CREATE TABLE "handover" (
    "id" TEXT NOT NULL,
    "rig_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "crew_id" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "state" "handover_state" NOT NULL DEFAULT 'offered',
    "created_by" TEXT NOT NULL,
    "created_by_name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "decided_by" TEXT,
    "decided_by_name" TEXT,
    "decided_at" TIMESTAMPTZ(3),
    "answer" TEXT NOT NULL DEFAULT '',
    "to_crew_id" TEXT,
    "to_crew_name" TEXT,
    "received_id" TEXT,

    CONSTRAINT "handover_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "proposal" (
    "id" TEXT NOT NULL,
    "rig_id" TEXT NOT NULL,
    "from_rig_id" TEXT NOT NULL,
    "from_rig_name" TEXT NOT NULL,
    "from_crew_id" TEXT NOT NULL,
    "from_crew_name" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "edits" JSONB NOT NULL,
    "words" TEXT NOT NULL,
    "state" "proposal_state" NOT NULL DEFAULT 'open',
    "created_by" TEXT NOT NULL,
    "created_by_name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "decided_by" TEXT,
    "decided_by_name" TEXT,
    "decided_at" TIMESTAMPTZ(3),
    "answer" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "proposal_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "audit_entry" (
    "id" BIGSERIAL NOT NULL,
    "crew_id" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,
    "by_name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "rig_id" TEXT,
    "what" JSONB NOT NULL,

    CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "handover_token_hash_key" ON "handover"("token_hash");

-- CreateIndex
CREATE INDEX "handover_crew_id_idx" ON "handover"("crew_id");

-- CreateIndex
CREATE INDEX "handover_rig_id_number_idx" ON "handover"("rig_id", "number");

-- CreateIndex
CREATE INDEX "handover_to_crew_id_idx" ON "handover"("to_crew_id");

-- CreateIndex
CREATE INDEX "proposal_rig_id_state_idx" ON "proposal"("rig_id", "state");

-- CreateIndex
CREATE INDEX "proposal_from_rig_id_idx" ON "proposal"("from_rig_id");

-- CreateIndex
CREATE INDEX "audit_entry_crew_id_id_idx" ON "audit_entry"("crew_id", "id");

-- AddForeignKey
ALTER TABLE "rig_revision" ADD CONSTRAINT "rig_revision_rig_id_fkey" FOREIGN KEY ("rig_id") REFERENCES "rig"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_rig_id_number_fkey" FOREIGN KEY ("rig_id", "number") REFERENCES "rig_revision"("rig_id", "number") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "proposal" ADD CONSTRAINT "proposal_rig_id_fkey" FOREIGN KEY ("rig_id") REFERENCES "rig"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "audit_entry" ADD CONSTRAINT "audit_entry_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- A revision is what others were told and were handed: it never changes. Prisma's schema has no word for a trigger.
CREATE FUNCTION "refuse_rig_revision_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'revision % of rig % never changes', OLD."number", OLD."rig_id";
END
$$;

-- CreateTrigger
CREATE TRIGGER "rig_revision_never_changes" BEFORE UPDATE ON "rig_revision" FOR EACH ROW EXECUTE FUNCTION "refuse_rig_revision_change"();

-- What was done stays written down.
CREATE FUNCTION "refuse_audit_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'entry % of the audit never changes', OLD."id";
END
$$;

-- CreateTrigger
CREATE TRIGGER "audit_entry_never_changes" BEFORE UPDATE ON "audit_entry" FOR EACH ROW EXECUTE FUNCTION "refuse_audit_change"();
