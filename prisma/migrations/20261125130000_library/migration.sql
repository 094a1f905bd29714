-- CreateEnum
CREATE TYPE "type_origin" AS ENUM ('file', 'draft');

-- CreateEnum
CREATE TYPE "draft_state" AS ENUM ('open', 'published', 'dropped');

-- CreateTable
CREATE TABLE "fixture_type" (
    "id" TEXT NOT NULL,
    "crew_id" TEXT NOT NULL,
    "maker" TEXT NOT NULL,
    "model" TEXT NOT NULL,
    "key" TEXT,
    "guid" TEXT NOT NULL,
    "newest" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "removed_at" TIMESTAMPTZ(3),

    CONSTRAINT "fixture_type_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "type_revision" (
    "type_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,
    "content" TEXT NOT NULL,
    "summary" JSONB NOT NULL,
    "report" JSONB,
    "note" TEXT NOT NULL,
    "origin" "type_origin" NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by" TEXT NOT NULL,

    CONSTRAINT "type_revision_pkey" PRIMARY KEY ("type_id","number")
);

-- CreateTable
CREATE TABLE "type_draft" (
    "id" TEXT NOT NULL,
    "crew_id" TEXT NOT NULL,
    "type_id" TEXT,
    "base" INTEGER,
    "base_content" TEXT,
    "state" "draft_state" NOT NULL DEFAULT 'open',
    "created_by" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "head" BIGINT NOT NULL DEFAULT 0,
    "fence" BIGINT NOT NULL DEFAULT 0,

    CONSTRAINT "type_draft_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "type_draft_update" (
    "draft_id" TEXT NOT NULL,
    "seq" BIGINT NOT NULL,
    "author" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "bytes" BYTEA NOT NULL,

    CONSTRAINT "type_draft_update_pkey" PRIMARY KEY ("draft_id","seq")
);

-- CreateTable
CREATE TABLE "type_draft_checkpoint" (
    "draft_id" TEXT NOT NULL,
    "seq" BIGINT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "type_draft_checkpoint_pkey" PRIMARY KEY ("draft_id","seq")
);

-- CreateIndex
CREATE INDEX "fixture_type_crew_id_guid_idx" ON "fixture_type"("crew_id", "guid");

-- CreateIndex
CREATE UNIQUE INDEX "fixture_type_crew_id_key_key" ON "fixture_type"("crew_id", "key");

-- CreateIndex
CREATE INDEX "type_draft_crew_id_state_idx" ON "type_draft"("crew_id", "state");

-- CreateIndex
CREATE INDEX "type_draft_type_id_idx" ON "type_draft"("type_id");

-- AddForeignKey
ALTER TABLE "fixture_type" ADD CONSTRAINT "fixture_type_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "type_revision" ADD CONSTRAINT "type_revision_type_id_fkey" FOREIGN KEY ("type_id") REFERENCES "fixture_type"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "type_draft" ADD CONSTRAINT "type_draft_crew_id_fkey" FOREIGN KEY ("crew_id") REFERENCES "crew"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "type_draft" ADD CONSTRAINT "type_draft_type_id_fkey" FOREIGN KEY ("type_id") REFERENCES "fixture_type"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "type_draft_checkpoint" ADD CONSTRAINT "type_draft_checkpoint_draft_id_fkey" FOREIGN KEY ("draft_id") REFERENCES "type_draft"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- A revision is what others were told and pinned: it never changes. Prisma's schema has no word for a trigger.
CREATE FUNCTION "refuse_revision_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'revision % of fixture type % never changes', OLD."number", OLD."type_id";
END
$$;

-- CreateTrigger
CREATE TRIGGER "type_revision_never_changes" BEFORE UPDATE ON "type_revision" FOR EACH ROW EXECUTE FUNCTION "refuse_revision_change"();
