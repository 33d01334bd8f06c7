/** Sample bends: scrap held into the corner of roof and pillar, the gaps that a rule reads there, and what they come to, with a picture of both. */
import { useMemo, type ReactNode } from 'react';
import { addSample, changeSample, removeSample, withoutRail } from '../../core/edit/samples.ts';
import { toRadians } from '../../core/geometry/angle.ts';
import { MOST_GAPS, MOST_SAMPLES, type Sample, type SampleGap } from '../../core/job/kinds/sample.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { fitSampleBend } from '../../core/survey/sample-bend.ts';
import { NO_BEND_WORDS, sampleInWords } from '../../core/words/sample-bend.ts';
import { useDocument } from '../../store/page.ts';
import { BendAngleField, LengthField, LengthOrNothingField, SelectField, TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Command } from '../kit/Command.tsx';
import { SamplePicture } from './SamplePicture.tsx';
import './sample.css';

const NONE: readonly Sample[] = [];

export default function SampleBends(): ReactNode {
  const samples = useDocument((state) => state.job.survey?.samples ?? NONE);
  const die = useDocument((state) => state.job.dies[0]);
  return (
    <>
      <p className="small">
        Bend a piece of scrap, hold it into the corner of roof and pillar where the hoop will stand, and read the gaps
        with a rule, square to the tube: two at the roof leg, two at the pillar leg, each a hand or more apart.
      </p>
      {samples.map((sample, index) => (
        <SampleCard key={index} sample={sample} index={index} />
      ))}
      {samples.length < MOST_SAMPLES && (
        <Command
          step="Add a sample bend"
          run={(job) =>
            addSample(job, {
              name: `Sample bend ${samples.length + 1}`,
              radius: die?.centrelineRadius ?? USUAL.radius,
              outerDiameter: die?.outerDiameter ?? USUAL.outerDiameter,
              angle: USUAL.angle,
              air: USUAL.air,
              gaps: FIRST_GAPS,
            })
          }
        >
          Add a sample bend
        </Command>
      )}
    </>
  );
}

/** mm and degrees, where no die says other. */
const USUAL = { radius: 152.4, outerDiameter: 44.45, angle: 60, air: 12.7 } as const;
const FIRST_GAPS: readonly SampleGap[] = [
  { leg: 'roof', along: 50.8 },
  { leg: 'roof', along: 304.8 },
  { leg: 'pillar', along: 50.8 },
  { leg: 'pillar', along: 304.8 },
];

function SampleCard({ sample, index }: { sample: Sample; index: number }): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const dies = useDocument((state) => state.job.dies);
  const found = useMemo(
    () =>
      fitSampleBend({
        ...sample,
        angle: toRadians(sample.angle),
        rail: sample.rail ?? null,
        gaps: sample.gaps.flatMap(({ gap, ...place }) => (gap === undefined ? [] : [{ ...place, gap }])),
      }),
    [sample],
  );
  const set = <T,>(step: string, fields: (value: T) => Partial<Sample>) =>
    jobEdit<T>(step, (job, value) => changeSample(job, index, fields(value)));
  const setGap = (at: number, change: Partial<SampleGap>): Partial<Sample> => ({
    gaps: sample.gaps.map((gap, i) => (i === at ? { ...gap, ...change } : gap)),
  });
  const die = dies.find(
    (each) => each.centrelineRadius === sample.radius && each.outerDiameter === sample.outerDiameter,
  );
  return (
    <section className="sample" aria-label={shownName(sample.name)}>
      <TextField
        label="Sample bend"
        labelUnseen
        value={sample.name}
        {...set<string>('Name a sample bend', (name) => ({ name }))}
      />
      <div className="fields">
        {dies.length > 0 && (
          <SelectField
            label="Die"
            value={die?.id ?? ''}
            choices={dies.map(({ id, name }) => ({ value: id, label: shownName(name) }))}
            onChoose={(id) => {
              const chosen = dies.find((each) => each.id === id);
              if (chosen === undefined) return;
              set<Sample>('Die of a sample bend', () => ({
                radius: chosen.centrelineRadius,
                outerDiameter: chosen.outerDiameter,
              })).commit(sample);
            }}
          />
        )}
        {dies.length === 0 && (
          <>
            <LengthField
              size
              label="Centreline radius"
              value={sample.radius}
              {...set<number>('Radius of a sample bend', (radius) => ({ radius }))}
            />
            <LengthField
              size
              label="Tube, outer diameter"
              value={sample.outerDiameter}
              {...set<number>('Tube of a sample bend', (outerDiameter) => ({ outerDiameter }))}
            />
          </>
        )}
        <BendAngleField
          label="The scrap’s bend"
          value={sample.angle}
          {...set<number>('Angle of a sample bend', (angle) => ({ angle }))}
        />
        <LengthField
          label="Air wanted at roof and pillar"
          value={sample.air}
          {...set<number>('Air at a sample bend', (air) => ({ air: Math.max(0, air) }))}
        />
      </div>
      <table className="table table-plain">
        <caption className="spoken-only">Gaps from the tube’s outside to the car, square to the leg</caption>
        <thead>
          <tr>
            <th scope="col">Leg</th>
            <th scope="col">From the bend’s end</th>
            <th scope="col">Gap</th>
          </tr>
        </thead>
        <tbody>
          {sample.gaps.map((gap, at) => {
            const name = `${gap.leg === 'roof' ? 'Roof' : 'Pillar'} ${sample.gaps.slice(0, at + 1).filter(({ leg }) => leg === gap.leg).length}`;
            return (
              <tr key={at}>
                <th scope="row">{name}</th>
                <td>
                  <LengthField
                    label={`${name}, from the bend’s end`}
                    labelUnseen
                    value={gap.along}
                    {...set<number>('Place of a gap', (along) => setGap(at, { along: Math.max(0, along) }))}
                  />
                </td>
                <td>
                  <LengthOrNothingField
                    label={`${name}, gap`}
                    labelUnseen
                    value={gap.gap ?? null}
                    {...jobEdit<number | null>('Gap of a sample bend', (job: Job, read) =>
                      changeSample(job, index, {
                        gaps: sample.gaps.map((each, i) => (i === at ? withGap(each, read) : each)),
                      }),
                    )}
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <div className="row">
        {(['roof', 'pillar'] as const).map((leg) => (
          <Command
            key={leg}
            quiet
            step={`Add a gap at the ${leg}`}
            disabled={sample.gaps.length >= MOST_GAPS}
            run={(job) => changeSample(job, index, { gaps: [...sample.gaps, { leg, along: NEXT }] })}
          >
            {leg === 'roof' ? 'One more at the roof' : 'One more at the pillar'}
          </Command>
        ))}
        <Command
          quiet
          step="Take the last gap out"
          disabled={sample.gaps.length === 0}
          run={(job) => changeSample(job, index, { gaps: sample.gaps.slice(0, -1) })}
        >
          Take the last one out
        </Command>
      </div>
      <div className="fields">
        <LengthOrNothingField
          label="Gap at the bend’s middle, to the rail"
          value={sample.rail ?? null}
          {...jobEdit<number | null>('Gap at the rail', (job: Job, rail) =>
            rail === null ? withoutRail(job, index) : changeSample(job, index, { rail }),
          )}
        />
      </div>
      {typeof found === 'string' ? (
        <p role="status">{NO_BEND_WORDS[found]}</p>
      ) : (
        <div role="status">
          <SamplePicture sample={sample} found={found} />
          {sampleInWords(sample, found, unit).map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      )}
      <Command quiet step={`Delete ${sample.name}`} run={(job) => removeSample(job, index)}>
        Delete this sample bend
      </Command>
    </section>
  );
}

const withGap = ({ leg, along }: SampleGap, read: number | null): SampleGap =>
  read === null ? { leg, along } : { leg, along, gap: read };

/** mm along a leg: of a gap that is added. */
const NEXT = 152.4;
