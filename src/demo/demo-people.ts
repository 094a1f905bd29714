/** The invented people of the demo. They have no password: only the demo's own door lets them in. */
export const DEMO_PEOPLE = {
  designer: { id: 'demo-designer', name: 'Odile Fenn', email: 'odile@demo.invalid' },
  technician: { id: 'demo-technician', name: 'Bram Kettle', email: 'bram@demo.invalid' },
} as const;

/** The invented crews, who is in them as what, and the venue that the house crew keeps. */
export const DEMO_CREWS = [
  {
    id: 'demo-touring',
    name: 'Saltwind Touring',
    members: { designer: 'lead', technician: 'editor' },
    venues: [],
  },
  {
    id: 'demo-house',
    name: 'Millrace house crew',
    members: { designer: 'reader', technician: 'lead' },
    venues: [{ id: 'demo-millrace', name: 'Millrace Playhouse' }],
  },
] as const;
