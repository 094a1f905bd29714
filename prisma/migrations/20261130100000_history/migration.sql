-- CreateTable
CREATE TABLE "rig_change" (
    "rig_id" TEXT NOT NULL,
    "seq" BIGINT NOT NULL,
    "nth" INTEGER NOT NULL,
    "author" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "part" TEXT NOT NULL,
    "row_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "field" TEXT,
    "before" TEXT,
    "after" TEXT,

    CONSTRAINT "rig_change_pkey" PRIMARY KEY ("rig_id","seq","nth")
);

-- CreateTable
CREATE TABLE "rig_change_mark" (
    "rig_id" TEXT NOT NULL,
    "seq" BIGINT NOT NULL,
    "begins" BIGINT NOT NULL DEFAULT 0,
    "begins_at" TIMESTAMPTZ(3),

    CONSTRAINT "rig_change_mark_pkey" PRIMARY KEY ("rig_id")
);

-- CreateIndex
CREATE INDEX "rig_change_row_id_idx" ON "rig_change" USING HASH ("row_id");

-- CreateIndex
CREATE INDEX "rig_change_rig_id_author_seq_idx" ON "rig_change"("rig_id", "author", "seq");

-- CreateIndex
CREATE INDEX "rig_change_rig_id_at_idx" ON "rig_change"("rig_id", "at");

-- AddForeignKey
ALTER TABLE "rig_change" ADD CONSTRAINT "rig_change_rig_id_fkey" FOREIGN KEY ("rig_id") REFERENCES "rig"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "rig_change_mark" ADD CONSTRAINT "rig_change_mark_rig_id_fkey" FOREIGN KEY ("rig_id") REFERENCES "rig"("id") ON DELETE CASCADE ON UPDATE CASCADE;
