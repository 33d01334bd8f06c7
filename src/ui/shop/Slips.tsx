/** What a slip at the bender does to the end of the tube and to its nodes, and which end is left long for the scatter of the shop. */
import type { ReactNode } from 'react';
import { toRadians } from '../../core/geometry/angle.ts';
import { leaveLong } from '../../core/edit/members.ts';
import { ROUNDING } from '../../core/geometry/tolerance.ts';
import { nodesAlong } from '../../core/marks/nodes-along.ts';
import {
  bendSlips,
  SLIP_MARK,
  endSpreads,
  endToLeaveLong,
  spreadsAt,
  type Spread,
  type Tolerances,
} from '../../core/marks/slips.ts';
import { FIRST_SCATTER, GREATEST_SCATTER, type Scatter } from '../../core/job/kinds/scatter.ts';
import { nodeName } from '../../core/solve/names.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { stepAbove } from '../../core/units/step.ts';
import { shopRecord, useDocument, useShop } from '../../store/page.ts';
import { DeviationField, NumberField } from '../fields/Fields.tsx';
import { Length, ShortfallLength } from '../fields/Readings.tsx';
import { Command } from '../kit/Command.tsx';
import { Section } from '../kit/Section.tsx';
import '../bending/marks.css';

export function Slips({ tube }: { tube: SolvedTube }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const scatter = useShop((state) => state.shop.scatter ?? FIRST_SCATTER);
  const tolerances = {
    angle: toRadians(scatter.angle),
    rotation: toRadians(scatter.rotation),
    mark: scatter.mark,
  };
  const spreads = endSpreads(tube, tolerances);
  const inWords = unit === 'in' ? 'Inches' : 'Millimetres';
  const long = endToLeaveLong(spreads);
  const keep = (key: keyof Scatter) => (value: number) => {
    shopRecord.getState().change((shop) => ({ ...shop, scatter: { ...scatter, [key]: value } }));
    return [];
  };
  return (
    <Section title="What a slip does" open>
      {long === null ? (
        <p className="advice">Slips of this shop move neither end along its own tube: no end need be left long.</p>
      ) : (
        <ForSlips tube={tube} {...long} />
      )}
      <table className="table table-plain marks-table">
        <caption className="small">{`${inWords} that end B moves, end A held`}</caption>
        <thead>
          <tr>
            <th scope="col">Bend</th>
            <th scope="col" className="number">
              1° of bend
            </th>
            <th scope="col" className="number">
              1° of rotation
            </th>
            <th scope="col" className="number">
              {unit === 'in' ? '1/16 in' : '2 mm'} of mark
            </th>
          </tr>
        </thead>
        <tbody>
          {bendSlips(tube, SLIP_MARK[unit]).map(({ bend, angle, rotation, mark }) => (
            <tr key={bend}>
              <th scope="row">{bend}</th>
              <td className="number">
                <Length mm={angle.distance} />
              </td>
              <td className="number">{rotation === null ? '–' : <Length mm={rotation.distance} />}</td>
              <td className="number">
                <Length mm={mark.distance} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <fieldset className="trio">
        <legend>This shop’s scatter, one standard deviation</legend>
        <NumberField label="Bend, °" value={scatter.angle} commit={keep('angle')} {...OF_ANGLES} />
        <NumberField label="Rotation, °" value={scatter.rotation} commit={keep('rotation')} {...OF_ANGLES} />
        <DeviationField
          label={`Mark, ${unit}`}
          value={scatter.mark}
          greatest={GREATEST_SCATTER}
          commit={keep('mark')}
        />
      </fieldset>
      <table className="table table-plain marks-table">
        <caption className="small">{`${inWords} that hold 95 of 100 ends, the other end held`}</caption>
        <thead>
          <tr>
            <th scope="col">End</th>
            <th scope="col" className="number">
              Along the tube, ±
            </th>
            <th scope="col" className="number">
              Half length, width, height
            </th>
          </tr>
        </thead>
        <tbody>
          <SpreadRow end="A" spread={spreads[0]} />
          <SpreadRow end="B" spread={spreads[1]} />
        </tbody>
      </table>
      <AtNodes
        tube={tube}
        tolerances={tolerances}
        caption={`${inWords}, half the length, width and height of what holds 95 of 100`}
      />
    </Section>
  );
}

/** The end that is to be cut after bending, how far it is left long for that, and the key that leaves it so. */
function ForSlips({ tube, end: letter, by }: { tube: SolvedTube; end: 'A' | 'B'; by: number }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const { member } = tube;
  const which = letter === 'A' ? 0 : 1;
  const { allowance, node } = tube.ends[which];
  const within = '95 of 100 such tubes come out within that.';
  if (allowance >= by - ROUNDING) {
    return (
      <p className="advice">
        <strong>
          End {letter} is left <Length mm={allowance} withUnit /> long, enough to cut it after bending:
        </strong>{' '}
        it needs <ShortfallLength mm={by} />, and {within}
      </p>
    );
  }
  return (
    <p className="advice">
      <strong>
        To cut end {letter} after bending, leave it <ShortfallLength mm={by} /> long:
      </strong>{' '}
      {within} {allowance !== 0 && <Now mm={allowance} />}
      {node !== null && (
        <Command
          quiet
          step={`Leave end ${letter} of ${member.name} long`}
          label={`Leave end ${letter} long`}
          run={(job) => leaveLong(job, member.id, which, stepAbove(by, unit))}
        >
          Leave it long
        </Command>
      )}
    </p>
  );
}

/** What is left there so far; below 0 the end is meant to be short. */
const Now = ({ mm }: { mm: number }): ReactNode => (
  <>
    It is <Length mm={Math.abs(mm)} withUnit /> {mm < 0 ? 'short' : 'long'} now.{' '}
  </>
);

/** The same of each node that stands on the tube, folded away; a corner's at the middle of its bend. */
function AtNodes(props: { tube: SolvedTube; tolerances: Tolerances; caption: string }): ReactNode {
  const { tube, tolerances, caption } = props;
  const derived = useDocument((state) => state.derived);
  const nodes = nodesAlong(tube, derived);
  if (nodes.length === 0) return null;
  const spreads = spreadsAt(
    tube,
    tolerances,
    nodes.map(({ at }) => at),
  );
  return (
    <details className="marks-nodes">
      <summary>At each node on the tube</summary>
      <table className="table table-plain marks-table">
        <caption className="small">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">End A held</th>
            <th scope="col">End B held</th>
          </tr>
        </thead>
        {nodes.map(({ node }, i) => (
          <tbody key={node}>
            <tr>
              <th scope="rowgroup" colSpan={2} className="marks-node">
                {nodeName(derived.job, node)}
              </th>
            </tr>
            <tr>
              <td>
                <Axes spread={spreads[i]!.heldA} />
              </td>
              <td>
                <Axes spread={spreads[i]!.heldB} />
              </td>
            </tr>
          </tbody>
        ))}
      </table>
      <p className="small">At a corner: the middle of its bend.</p>
    </details>
  );
}

const OF_ANGLES = { least: 0, greatest: GREATEST_SCATTER, step: 0.1 };

/** Never shown smaller than they are. */
function SpreadRow({ end, spread }: { end: 'A' | 'B'; spread: Spread }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  return (
    <tr>
      <th scope="row">{end}</th>
      <td className="number">
        <Length mm={stepAbove(spread.along, unit)} />
      </td>
      <td className="number">
        <Axes spread={spread} />
      </td>
    </tr>
  );
}

function Axes({ spread }: { spread: Spread }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  return spread.axes.map(({ length }, i) => (
    <span key={i} className="marks-axis">
      <Length mm={stepAbove(length, unit)} />
    </span>
  ));
}
