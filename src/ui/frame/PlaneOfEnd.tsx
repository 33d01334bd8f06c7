/** What an end stands on: which foot, and how the plate is turned, as a level shows it. Never a vector to type. */
import type { ReactNode } from 'react';
import { contactArea, coveredArea } from '../../core/feet/amount.ts';
import { facing, FACES, GREATEST_LEAN, leaned, slopeOf, type Face } from '../../core/feet/slope.ts';
import { standsOf } from '../../core/feet/stand.ts';
import { standOnNew } from '../../core/edit/feet.ts';
import { fault } from '../../core/job/fault.ts';
import type { EndFit } from '../../core/job/kinds/end.ts';
import type { Foot } from '../../core/job/kinds/foot.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import type { Job } from '../../core/job/types.ts';
import { areaInWords, leanNames, slopeInWords } from '../../core/words/feet.ts';
import { useDocument } from '../../store/page.ts';
import type { Committing } from '../fields/EntryField.tsx';
import { AngleField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Command } from '../kit/Command.tsx';
import { Drawn } from '../kit/Drawn.tsx';
import { choicesOf } from './choices.ts';
import { footPicture, slopePicture } from './foot-picture.ts';
import { footTrimOf } from './foot-trim.ts';

type OnPlane = Extract<EndFit, { fit: 'plate' | 'foot' }>;

interface Props {
  readonly member: Member;
  readonly which: 0 | 1;
  readonly end: OnPlane;
  readonly step: string;
  readonly change: (job: Job, fit: EndFit) => Job;
}

export function PlaneOfEnd(props: Props): ReactNode {
  const { end, step, change } = props;
  const { face, leans } = slopeOf(end.normal);
  return (
    <>
      {end.fit === 'foot' && <FootOfEnd {...props} end={end} />}
      <JobSelect
        label={end.fit === 'foot' ? 'The foot faces' : 'The plate faces'}
        value={face}
        choices={FACE_CHOICES}
        step={step}
        change={(job, value) => change(job, { ...end, normal: facing(value as Face) })}
      />
      <div className="fields fields-two">
        {([0, 1] as const).map((which) => {
          const [above, below] = leanNames(face, which);
          return (
            <AngleField
              key={above}
              label={`${above} (− ${below.split(' ')[1]})`}
              value={leans[which]}
              {...leanEdit(step, (job, lean) => change(job, { ...end, normal: leaned(end.normal, which, lean) }))}
            />
          );
        })}
      </div>
      <SlopeDrawn {...props} />
    </>
  );
}

/** Refused where the plate would face another way: that is chosen above. */
function leanEdit(step: string, change: (job: Job, lean: number) => Job): Required<Committing<number>> {
  const edit = jobEdit<number>(step, change);
  const isBeyond = (lean: number): boolean => Math.abs(lean) > GREATEST_LEAN;
  return {
    ...edit,
    commit: (lean) =>
      isBeyond(lean) ? [fault('', `beyond ${GREATEST_LEAN}°: choose another way that it faces`)] : edit.commit(lean),
    nudge: (lean, first, ended) => !isBeyond(lean) && edit.nudge(lean, first, ended),
  };
}

const FACE_CHOICES: readonly { value: Face; label: string }[] = FACES.map((face) => ({
  value: face,
  label: face === 'up' ? 'up, as on a floor' : face === 'down' ? 'down, as under a roof' : face,
}));

function SlopeDrawn({ member, which, end }: Props): ReactNode {
  const direction = useDocument((state) => state.derived.bars.get(member.id)?.ends[which].direction);
  const said = slopeInWords(end.normal);
  return (
    <>
      <p className="small">
        {end.fit === 'foot' ? 'The foot' : 'The plate'}: {said}. A level laid on it along the car, and one across, show
        the two angles.
      </p>
      {direction !== undefined && (
        <Drawn
          {...slopePicture(end.normal, direction)}
          scale={4}
          label={`The plate against a level, from two sides: ${said}`}
        />
      )}
    </>
  );
}

function FootOfEnd({ member, which, end, step, change }: Props & { end: Extract<EndFit, { fit: 'foot' }> }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const { job } = derived;
  const stand = derived.tubes
    .filter(({ bar }) => bar === member.id)
    .flatMap(standsOf)
    .find((each) => each.which === which && each.foot.id === end.foot);
  return (
    <>
      <JobSelect
        label="Foot"
        value={end.foot}
        choices={choicesOf(job.feet)}
        step={step}
        change={(before, foot) => change(before, { ...end, foot })}
      />
      <div className="row">
        {(['plate', 'box'] as const).map((kind) => (
          <Command
            key={kind}
            quiet
            step={`New ${kind}, ${step}`}
            run={(before) => standOnNew(before, member.id, which, kind, end, footTrimOf(before))}
          >
            New {kind} here
          </Command>
        ))}
      </div>
      {stand !== undefined && (
        <>
          <Drawn
            {...footPicture(stand.foot, stand.outline, 36)}
            scale={4}
            label={`${stand.foot.name} from the tube’s side, with where the tube stands`}
          />
          <p className="small">{touchInWords(stand.foot, job)}</p>
        </>
      )}
    </>
  );
}

/** What it touches the car with. */
export function touchInWords(foot: Foot, { lengthUnit }: Pick<Job, 'lengthUnit'>): string {
  const area = areaInWords(contactArea(foot), lengthUnit);
  if (foot.kind === 'plate') return `Touches the car with ${area}.`;
  return `Touches the car with the foot of its walls, ${area}; covers ${areaInWords(coveredArea(foot), lengthUnit)}.`;
}
