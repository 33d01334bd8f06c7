/**
 * The fitting of the cage in the car: the air above each joint under the roof, how far the cage is lowered to weld them all, whether the
 * boxes of its feet give that, and what is in the way. Worked out while it is looked at.
 */
import type { ReactNode } from 'react';
import { setDoorOpening, setRoofReach, setTorchRoom } from '../../core/edit/fitting.ts';
import { doorOf } from '../../core/fitting/door.ts';
import { lowering, metOnTheWay, type JointAir } from '../../core/fitting/lowering.ts';
import { slitsOf, type Slit } from '../../core/fitting/through-door.ts';
import { tubeName } from '../../core/solve/names.ts';
import { FIRST_ROOF_REACH, FIRST_TORCH_ROOM } from '../../core/job/kinds/fitting.ts';
import {
  boxesInWords,
  doorInWords,
  inTheWayInWords,
  jointName,
  lowerInWords,
  shownLengths,
  stoppedInWords,
  type ShownLengths,
} from '../../core/words/fitting.ts';
import { trimName } from '../../core/words/trim.ts';
import { editor, useDocument } from '../../store/page.ts';
import { LengthField, SizeOrNothingField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { GapLength, Length, ShortfallLength } from '../fields/Readings.tsx';
import './fitting.css';

export default function Fitting(): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { torchRoom = FIRST_TORCH_ROOM, roofReach = FIRST_ROOF_REACH, lengthUnit: unit } = derived.job;
  const found = lowering(derived);
  const show = shownLengths(unit);
  const [figure, decides] = lowerInWords(found, derived, show);
  const met = metOnTheWay(derived);
  const boxes = boxesInWords(found, show);
  const stopped = stoppedInWords(found, derived, show);
  const unknown = found.joints.some(({ roof }) => roof === null);
  return (
    <>
      <div className="fields">
        <LengthField
          label="Room the torch wants above a joint"
          value={torchRoom}
          {...jobEdit<number>('Room above a joint', setTorchRoom)}
        />
        <LengthField
          label="How far aside still counts as over a joint"
          value={roofReach}
          {...jobEdit<number>('How far aside counts', setRoofReach)}
        />
      </div>
      <p>
        <strong>{figure}</strong> {decides} {boxes}
      </p>
      {stopped.length > 0 && (
        <>
          <p className="small">
            These ends do not go down so far. Trim each and make a hole under it, so deep, or fit a tube that can wait
            once the cage is lifted:
          </p>
          <PlainList items={stopped} />
        </>
      )}
      {met.length > 0 && (
        <>
          <p className="small">
            Standing so low, the cage runs into the car. Take out what can be taken out, or leave these tubes for later:
          </p>
          <PlainList items={met.map((each) => inTheWayInWords(each, derived, show))} />
        </>
      )}
      {found.joints.length > 0 && (
        <FittingTable
          caption="Air above the joints under the roof, the least first"
          columns={['Joint', 'Air above', 'Short by']}
        >
          {found.joints.map((each) => (
            <Row key={each.joint.at.join(' ')} {...each} />
          ))}
        </FittingTable>
      )}
      {unknown && (
        <p className="small">
          “Not measured”: no measured point and no body line lies over the joint. Measure the roof straight over it, as
          a point, or draw a body line across the roof over several joints.
        </p>
      )}
      <ThroughTheDoor show={show} />
    </>
  );
}

interface FittingTableProps {
  readonly caption: string;
  /** Of whom a row is, then its figures. */
  readonly columns: readonly [string, ...string[]];
  readonly children: ReactNode;
}

const FittingTable = ({ caption, columns: [whose, ...figures], children }: FittingTableProps): ReactNode => (
  <table className="table table-plain fitting-air">
    <caption className="spoken-only">{caption}</caption>
    <thead>
      <tr>
        <th scope="col">{whose}</th>
        {figures.map((header) => (
          <th scope="col" className="number" key={header}>
            {header}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>{children}</tbody>
  </table>
);

function Row({ joint, roof, short }: JointAir): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { at, tube } = joint;
  return (
    <tr>
      <th scope="row">
        <button type="button" className="link" onClick={() => editor.getState().goTo(at, { kind: 'tube', id: tube })}>
          {jointName(derived, joint)}
        </button>
        <span className="fitting-to small">
          {roof === null ? (
            <>
              measure at <Length mm={Math.abs(at[0])} withUnit /> {at[0] < 0 ? 'back' : 'forward'},{' '}
              <Length mm={Math.abs(at[1])} withUnit /> {at[1] < 0 ? 'to the right' : 'to the left'}
            </>
          ) : (
            <>
              to {trimName(derived.job, roof.trim)}, <Length mm={roof.aside} withUnit /> aside
            </>
          )}
        </span>
      </th>
      <td className="number">{roof === null ? 'not measured' : <GapLength mm={roof.air} />}</td>
      <td className="number">
        {short === null ? '' : short === 0 ? <span className="spoken-only">none</span> : <ShortfallLength mm={short} />}
      </td>
    </tr>
  );
}

function ThroughTheDoor({ show }: { show: ShownLengths }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const door = doorOf(derived.job);
  const slits = slitsOf(derived);
  if (slits.length === 0) return null;
  return (
    <>
      <h4>Through the door</h4>
      <div className="fields">
        <SizeOrNothingField
          label="Longest straight way across the door, if typed"
          value={derived.job.doorOpening ?? null}
          {...jobEdit<number | null>('The way across the door', setDoorOpening)}
        />
      </div>
      <p>{doorInWords(door, derived, show)}</p>
      <FittingTable
        caption="What bent tubes go through, laid flat"
        columns={['Bent tube', 'Opening it needs', 'Short by']}
      >
        {slits.map((slit) => (
          <SlitRow key={slit.tube} slit={slit} way={door?.way ?? null} />
        ))}
      </FittingTable>
      <p className="small">
        Worked out is the narrowest flat opening for the tube as bent, ends square, laid flat and pushed straight in
        along its own plane. Turned as it comes in, or led in end first, it may go through less. The round corners of
        the door take some of the way across.
      </p>
    </>
  );
}

function SlitRow({ slit: { tube, width, thickness }, way }: { slit: Slit; way: number | null }): ReactNode {
  const derived = useDocument((state) => state.derived);
  return (
    <tr>
      <th scope="row">
        {tubeName(derived, tube)}
        {width === null && <span className="fitting-to small">not flat: its bends do not lie in one plane</span>}
      </th>
      <td className="number">
        {width === null ? (
          'not worked out'
        ) : (
          <>
            <ShortfallLength mm={width} /> by <ShortfallLength mm={thickness} />
          </>
        )}
      </td>
      <td className="number">
        {width !== null && way !== null && width > way && <ShortfallLength mm={width - way} />}
      </td>
    </tr>
  );
}

const PlainList = ({ items }: { items: readonly string[] }): ReactNode => (
  <ul className="fitting-list">
    {items.map((item) => (
      <li key={item}>{item}</li>
    ))}
  </ul>
);
