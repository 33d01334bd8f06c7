/** The member's bends, and how one is given the angle that a shop would rather set: which place moves, by how much. */
import { useState, type ReactNode } from 'react';
import { keepAngle } from '../../core/edit/members.ts';
import { toDegrees } from '../../core/geometry/angle.ts';
import type { Axis } from '../../core/geometry/vector.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import { primed, type NodeRef } from '../../core/job/reference.ts';
import { rounded, roundingsOf } from '../../core/shape/round-angle.ts';
import { nodeName } from '../../core/solve/names.ts';
import type { Bend } from '../../core/solve/types.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { comparedLength } from '../../core/words/lengths.ts';
import { useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { drawnBar } from '../../core/solve/bar-tubes.ts';
import { BendAngleField } from '../fields/Fields.tsx';

/** Degrees: what two digits after the point show as a whole number. */
const SHOWN = 0.005;

const KEPT: Readonly<Record<Axis, string>> = { x: 'its station', y: 'its offset', z: 'its height' };

export function BendsEditor({ member }: { member: Member }): ReactNode {
  const bar = useDocument((state) => drawnBar(state.derived, member.id));
  if (bar === undefined || bar.bends.length === 0) return <p className="small">Straight: no bends.</p>;
  return bar.bends.map((bend, i) => {
    const index = bar.route.indexOf(bend.corner);
    // A bend and its image are made by the same node: both stand under the first.
    const imaged = primed(member.path[index]!);
    const image = bar.bends.findIndex(({ corner }) => member.path[bar.route.indexOf(corner)] === imaged);
    if (image !== -1 && image < i) return null;
    return (
      <BendAngle
        // Another corner, another question.
        key={`${i} ${member.path[index]}`}
        member={member}
        bend={bend}
        number={i + 1}
        image={image === -1 ? null : image + 1}
        index={index}
      />
    );
  });
}

interface BendProps {
  readonly member: Member;
  readonly bend: Bend;
  readonly number: number;
  /** The number of the bend that is its mirror image, in a hoop. */
  readonly image: number | null;
  /** Where its corner stands in the path. */
  readonly index: number;
}

function BendAngle({ member, bend, number, image, index }: BendProps): ReactNode {
  const derived = useDocument((state) => state.derived);
  const [asked, ask] = useState<number | null>(null);
  const { job } = derived;
  const corner: NodeRef = member.path[index]!;
  const angle = toDegrees(bend.angle);
  const kept = member.keptAngles?.find((each) => each.corner === corner);
  const ways = asked === null ? [] : roundingsOf(derived, member, index, asked);
  const isRound = Math.abs(angle - Math.round(angle)) < SHOWN;
  const shown = asked === null ? '' : `${formatAngle(asked, 2)}°`;
  return (
    <section className="end" aria-label={`Bend ${number}`}>
      <p className="small">
        <strong>{image === null ? `Bend ${number}` : `Bends ${number} and ${image}`}</strong> at {nodeName(job, corner)}
        : {formatAngle(angle, 2)}°{kept !== undefined && `, kept at ${formatAngle(kept.angle, 2)}°`}
      </p>
      <div className="row">
        <BendAngleField
          label="Make it"
          value={asked ?? Math.round(angle)}
          commit={(value) => {
            ask(value);
            return [];
          }}
        />
        {asked !== null || kept !== undefined ? null : isRound ? (
          <Command
            quiet
            step={`Bend ${number} of ${member.name} kept`}
            run={(before) => keepAngle(before, member.id, corner, Math.round(angle))}
          >
            {`Keep it at ${Math.round(angle)}°`}
          </Command>
        ) : (
          <button type="button" className="press press-quiet" onClick={() => ask(Math.round(angle))}>
            {`Show how to make it ${Math.round(angle)}°`}
          </button>
        )}
        {kept !== undefined && (
          <Command
            quiet
            step={`Bend ${number} of ${member.name} free`}
            run={(before) => keepAngle(before, member.id, corner, null)}
          >
            Let the angle go
          </Command>
        )}
      </div>
      {asked !== null && ways.length === 0 && (
        <p className="small" role="status">{`No one place can be moved to make it ${shown}: others hang on it.`}</p>
      )}
      {ways.map((way) => {
        const words = `Move ${nodeName(job, way.node)} ${comparedLength(way.by, job.lengthUnit)}${way.keeps === null ? ` along the leg from ${nodeName(job, way.at.from)}` : `, ${KEPT[way.keeps]} kept`}`;
        return (
          <Command
            key={JSON.stringify(way.at)}
            step={`Bend ${number} of ${member.name} to ${shown}`}
            run={(before) => rounded(before, member, corner, way, asked!)}
            onDone={() => ask(null)}
          >
            {words}
          </Command>
        );
      })}
    </section>
  );
}
