import { counted } from './screens.ts';

export const FRONT_WORDS = {
  job: 'The live, checked patch of a lighting rig. Your crew writes down every unit once: what it is, which mode it is set to, where it hangs, and the universe and slot it listens to. Designer and technician edit the same sheet at the same time. Whatever clashes shows on both screens at once, with a way to clear it, before anyone climbs a ladder.',
  signIn: 'Sign in',
  signUp: 'Make an account',
  demoTitle: 'Look around first',
  demo: 'An invented playhouse, two invented crews and a show of about 150 fixtures. Open both in two browsers to see two people in one sheet.',
  doors: { designer: 'Look around as the designer', technician: 'Look around as the technician' },
  entering: 'Opening…',
  rigs: 'Your rigs',
  keptRigs: 'No network. These are the rigs this device knows; the ones you opened here before will open.',
  noRigs: 'No rigs yet.',
  noCrews:
    'You are in no crew yet. A rig belongs to a crew: start one, or open the invitation link that a lead sent you.',
  noVenue: 'No venue',
  makeRig: 'Make a rig',
  makeCrew: 'Start a crew',
  crewLink: 'members and venues',
  changed: (moment: string) => `changed ${moment}`,
  crewAbout: (role: string, members: number) => `you are ${role} · ${counted(members, 'member')}`,
} as const;

export const MAKE_RIG_WORDS = {
  title: 'Make a rig',
  name: 'Name of the rig',
  nameHint: 'The show, or the house rig.',
  crew: 'Crew',
  kind: 'Kind',
  kinds: { show: 'Show rig: a production’s own', house: 'House rig: belongs to a venue' },
  venue: 'Venue',
  noVenue: 'None',
  venueHint: 'Venues are added on the page of the crew.',
  houseNeedsVenue: 'A house rig belongs to a venue. Choose one, or add it on the page of the crew first.',
  begins: 'Begins',
  empty: 'Empty',
  asHouse: (rig: string, venue: string | null) =>
    venue === null ? `As the house rig “${rig}”` : `As the house rig “${rig}” of ${venue}`,
  beginsHint: 'A show rig may begin as the newest revision of a house rig, with the same units.',
  noRevision: 'Nothing of this house rig is frozen yet. Open it and freeze a revision first.',
  submit: 'Make it',
} as const;

export const MAKE_CREW_WORDS = {
  title: 'Start a crew',
  about: 'The people who own rigs and venues together. You will be its lead and can invite the others.',
  name: 'Name of the crew',
  submit: 'Start it',
} as const;
