import { listAudit } from './audit/list.ts';
import { listAuditPeople } from './audit/people.ts';
import { createCrew } from './crews/create.ts';
import { getCrew } from './crews/get.ts';
import { leaveCrew } from './crews/leave.ts';
import { listCrews } from './crews/list.ts';
import { removeMember } from './crews/remove-member.ts';
import { renameCrew } from './crews/rename.ts';
import { setRole } from './crews/set-role.ts';
import { acceptOffer } from './handovers/accept.ts';
import { declineOffer } from './handovers/decline.ts';
import { lookAtOffer } from './handovers/look.ts';
import { handoversOfCrew } from './handovers/of-crew.ts';
import { handoversOfRig } from './handovers/of-rig.ts';
import { offerRevision } from './handovers/offer.ts';
import { withdrawOffer } from './handovers/withdraw.ts';
import { historyChanges } from './history/changes.ts';
import { historyPeople } from './history/people.ts';
import { historySteps } from './history/steps.ts';
import { acceptInvitation } from './invitations/accept.ts';
import { createInvitation } from './invitations/create.ts';
import { lookAtInvitation } from './invitations/look.ts';
import { revokeInvitation } from './invitations/revoke.ts';
import { getDraft } from './library/draft.ts';
import { listDrafts } from './library/drafts.ts';
import { dropDraft } from './library/drop-draft.ts';
import { getType } from './library/get.ts';
import { listTypes } from './library/list.ts';
import { newestOf } from './library/newest.ts';
import { openDraft } from './library/open-draft.ts';
import { publishDraft } from './library/publish-draft.ts';
import { removeType } from './library/remove.ts';
import { getRevision } from './library/revision.ts';
import { whereUsed } from './library/where-used.ts';
import { recallMapping } from './list-mappings/recall.ts';
import { rememberMapping } from './list-mappings/remember.ts';
import { getMe } from './me/get.ts';
import { decideOneProposal } from './proposals/decide.ts';
import { getProposal } from './proposals/get.ts';
import { listProposals } from './proposals/list-for-rig.ts';
import { makeOneProposal } from './proposals/make.ts';
import { withdrawOneProposal } from './proposals/withdraw.ts';
import { freezeRevision } from './revisions/freeze.ts';
import { listRevisions } from './revisions/list.ts';
import { startFromRevision } from './revisions/start.ts';
import { bringBackRig } from './rigs/bring-back.ts';
import { createRig } from './rigs/create.ts';
import { destroyRig } from './rigs/destroy.ts';
import { getRig } from './rigs/get.ts';
import { listRigs } from './rigs/list.ts';
import { removeRig } from './rigs/remove.ts';
import { listRemovedRigs } from './rigs/removed.ts';
import { renameRig } from './rigs/rename.ts';
import { trpc } from './trpc.ts';
import { createVenue } from './venues/create.ts';
import { listVenues } from './venues/list.ts';
import { renameVenue } from './venues/rename.ts';

/** Everything that is asked for outside a rig's document. The table in tests/prove/walls.ts has a row for each. */
export const appRouter = trpc.router({
  me: { get: getMe },
  crews: {
    list: listCrews,
    create: createCrew,
    get: getCrew,
    rename: renameCrew,
    leave: leaveCrew,
    setRole,
    removeMember,
  },
  invitations: {
    create: createInvitation,
    revoke: revokeInvitation,
    look: lookAtInvitation,
    accept: acceptInvitation,
  },
  venues: { list: listVenues, create: createVenue, rename: renameVenue },
  rigs: {
    list: listRigs,
    create: createRig,
    get: getRig,
    rename: renameRig,
    remove: removeRig,
    removed: listRemovedRigs,
    bringBack: bringBackRig,
    destroy: destroyRig,
  },
  audit: { list: listAudit, people: listAuditPeople },
  revisions: { list: listRevisions, freeze: freezeRevision, start: startFromRevision },
  history: { steps: historySteps, changes: historyChanges, people: historyPeople },
  handovers: {
    offer: offerRevision,
    withdraw: withdrawOffer,
    ofRig: handoversOfRig,
    ofCrew: handoversOfCrew,
    look: lookAtOffer,
    accept: acceptOffer,
    decline: declineOffer,
  },
  proposals: {
    make: makeOneProposal,
    listForRig: listProposals,
    get: getProposal,
    withdraw: withdrawOneProposal,
    decide: decideOneProposal,
  },
  library: {
    newest: newestOf,
    list: listTypes,
    get: getType,
    revision: getRevision,
    remove: removeType,
    whereUsed,
    openDraft,
    drafts: listDrafts,
    draft: getDraft,
    publishDraft,
    dropDraft,
  },
  listMappings: { recall: recallMapping, remember: rememberMapping },
});

export type AppRouter = typeof appRouter;
