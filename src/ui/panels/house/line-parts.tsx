import { type Outlet, recordOf } from '#engine/model/record.ts';
import { HOUSE_PLAN, renameOutlet } from '#engine/patch/house/house-plans.ts';
import { HOUSE_WORDS as words } from '#words/house.ts';
import { LineField } from '../../kit/line-field.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { AddKind, Named, Remove } from '../../plant/card-line-parts.tsx';
import { type CardColumn, CardList, type CardScene } from '../../plant/card-list.tsx';
import { carryOutPlan } from '../../workspace/carry-out-plan.ts';
import { Part } from '../part.tsx';

interface LinePartProps {
  readonly scene: CardScene;
}

const OUTLET = { card: 'outlet', plan: HOUSE_PLAN.outlet } as const;
const OUTLET_COLUMNS: readonly CardColumn[] = [
  { ...OUTLET, field: 'position', label: words.outlet.position, share: 3 },
  { ...OUTLET, field: 'carries', label: words.outlet.carries, share: 1.5 },
  { ...OUTLET, field: 'to', label: words.outlet.to, share: 3 },
  { ...OUTLET, field: 'notes', label: words.outlet.notes, share: 3 },
];

/** The data outlets of the house, and where their lines end. */
export function OutletsPart({ scene }: LinePartProps) {
  const outlets = [...recordOf(scene.rig.cards).outlets.values()];
  return (
    <Part anchor="outlets" title={words.parts.outlets}>
      {outlets.length === 0 ? <p className="pt-2">{words.none.outlet}</p> : null}
      <CardList
        scene={scene}
        name={words.parts.outlets}
        head={words.outlet.name}
        columns={OUTLET_COLUMNS}
        lines={outlets.map((outlet) => ({
          of: outlet.key,
          name: outlet.name,
          lead: <OutletName scene={scene} outlet={outlet} />,
          acts: <Remove scene={scene} kind="outlet" of={outlet.key} name={outlet.name} />,
        }))}
      />
      <AddKind scene={scene} kind="outlet" />
    </Part>
  );
}

/** What is known by its name moves when it is renamed. */
function OutletName({ scene: { store, writable }, outlet }: { readonly scene: CardScene; readonly outlet: Outlet }) {
  return (
    <LineField
      name={words.cellOf(words.outlet.name, outlet.name)}
      value={outlet.name}
      disabled={writable === 'no'}
      onWrite={(name) => carryOutPlan(store, renameOutlet(store.rig(), outlet.key, name))}
    />
  );
}

const SPARE = { card: 'spare', plan: HOUSE_PLAN.spare } as const;
const SPARE_COLUMNS: readonly CardColumn[] = [
  { ...SPARE, field: 'mode', label: words.spare.mode, share: 2 },
  { ...SPARE, field: 'count', label: words.spare.count, share: 1 },
  { ...SPARE, field: 'where', label: words.spare.where, share: 2 },
  { ...SPARE, field: 'notes', label: words.spare.notes, share: 3 },
];

/** What is in stock and hangs nowhere. */
export function SparesPart({ scene }: LinePartProps) {
  const { spares } = recordOf(scene.rig.cards);
  return (
    <Part anchor="spares" title={words.parts.spares}>
      {spares.length === 0 ? <p className="pt-2">{words.none.spare}</p> : null}
      <CardList
        scene={scene}
        name={words.parts.spares}
        head={words.spare.type}
        columns={SPARE_COLUMNS}
        lines={spares.map(({ id, type }) => ({
          of: id,
          name: type,
          lead: <Named scene={scene} kind="spare" field="type" of={id} name={type} label={words.spare.type} />,
          acts: <Remove scene={scene} kind="spare" of={id} name={type} />,
        }))}
      />
      <AddKind scene={scene} kind="spare" />
    </Part>
  );
}

const CONTACT = { card: 'contact', plan: HOUSE_PLAN.contact } as const;
const CONTACT_COLUMNS: readonly CardColumn[] = [
  { ...CONTACT, field: 'role', label: words.contact.role, share: 2 },
  { ...CONTACT, field: 'phone', label: words.contact.phone, share: 2 },
  { ...CONTACT, field: 'email', label: words.contact.email, share: 2 },
  { ...CONTACT, field: 'notes', label: words.contact.notes, share: 3 },
];

/** Who is to be asked, and how they are reached. */
export function ContactsPart({ scene }: LinePartProps) {
  const { contacts } = recordOf(scene.rig.cards);
  return (
    <Part anchor="contacts" title={words.parts.contacts}>
      {contacts.length === 0 ? <p className="pt-2">{words.none.contact}</p> : null}
      <CardList
        scene={scene}
        name={words.parts.contacts}
        head={words.contact.name}
        columns={CONTACT_COLUMNS}
        lines={contacts.map(({ id, name, phone, email }) => ({
          of: id,
          name,
          lead: <Named scene={scene} kind="contact" field="name" of={id} name={name} label={words.contact.name} />,
          acts: (
            <>
              {phone === '' ? null : (
                <a className={LINK_CLASSES} href={`tel:${phone.replace(/[^\d+]/g, '')}`} aria-label={words.call(name)}>
                  {words.callWord}
                </a>
              )}
              {email === '' ? null : (
                <a className={LINK_CLASSES} href={`mailto:${encodeURIComponent(email)}`} aria-label={words.write(name)}>
                  {words.writeWord}
                </a>
              )}
              <Remove scene={scene} kind="contact" of={id} name={name} />
            </>
          ),
        }))}
      />
      <AddKind scene={scene} kind="contact" />
    </Part>
  );
}
