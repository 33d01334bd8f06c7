/** The gussets at the chosen node: in which corners of the joint, or across its bend, one can be added, and what each of them is. */
import { useMemo, useState, type ReactNode } from 'react';
import {
  addGusset,
  flattenGusset,
  foldGusset,
  removeGusset,
  setFold,
  setGussetLeg,
  updateGusset,
} from '../../core/edit/gussets.ts';
import type { Derived } from '../../core/derive.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { extentOf } from '../../core/gusset/edges.ts';
import { foldFibre, type BentGusset } from '../../core/gusset/fold.ts';
import { gussetsOf, isMade, type SetGusset } from '../../core/gusset/gussets.ts';
import type { Sheet } from '../../core/gusset/sheet.ts';
import { isAcrossBend, type Gusset } from '../../core/job/kinds/gusset.ts';
import type { NodeRef } from '../../core/job/reference.ts';
import { shownName } from '../../core/job/shown.ts';
import { freeCorners, type FreeCorner } from '../../core/shape/gusset-corners.ts';
import { tubeName } from '../../core/solve/names.ts';
import { MM_PER_INCH, type LengthUnit } from '../../core/units/length.ts';
import { massInWords } from '../../core/units/mass.ts';
import {
  edgesInWords,
  foldInWords,
  gussetsCut,
  K_IN_WORDS,
  legInWords,
  whyNoGusset,
} from '../../core/words/gussets.ts';
import { capital } from '../../core/words/lists.ts';
import { moved, stretched } from '../../drawing/move.ts';
import type { Picture } from '../../drawing/types.ts';
import { sheetMarks } from '../../exports/gussets/pattern.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { LengthField, NumberField, SelectField, TextField } from '../fields/Fields.tsx';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Command } from '../kit/Command.tsx';
import { Drawn } from '../kit/Drawn.tsx';

const STEP = 'Change a gusset';

export default function Gussets({ node }: { readonly node: NodeRef }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const free = useMemo(() => freeCorners(derived, node), [derived, node]);
  const there = gussetsOf(derived).filter((set) => set.node === node);
  if (free.length === 0 && there.length === 0) return null;
  return (
    <>
      <h4>Gussets</h4>
      {there.map((set) => (
        <GussetFields key={set.id} set={set} />
      ))}
      {free.length > 0 && <NewGusset free={free} />}
    </>
  );
}

/** Which corner, and the key that puts a gusset in it. */
function NewGusset({ free }: { readonly free: readonly FreeCorner[] }): ReactNode {
  const [chosen, setChosen] = useState('');
  const choices = free.map((each) => ({ value: keyOf(each), each }));
  const { value, each } = choices.find((choice) => choice.value === chosen) ?? choices[0]!;
  const derived = useDocument((state) => state.derived);
  return (
    <div className="fields">
      <SelectField
        label="Corner"
        value={value}
        choices={choices.map((choice) => ({
          value: choice.value,
          label: cornerInWords(derived, choice.each, derived.nodes.get(choice.each.usual.node)!),
        }))}
        onChoose={setChosen}
      />
      <Command step="Add a gusset" run={(job) => addGusset(job, each.usual)}>
        Add a gusset
      </Command>
    </div>
  );
}

const keyOf = ({ usual: { between } }: FreeCorner): string =>
  between.map(({ member, towards }) => `${towards} ${member}`).join(' ');

const cornerInWords = (derived: Derived, { corner }: FreeCorner, place: Vec3): string => {
  const [one, two] = corner.sides;
  if (one.bar === two.bar) return `across the bend of ${one.bar.name}`;
  return `${legInWords(derived, one, place)} and ${legInWords(derived, two, place)}`;
};

function GussetFields({ set }: { readonly set: SetGusset }): ReactNode {
  const { gusset, ways, place } = set;
  const derived = useDocument((state) => state.derived);
  const { id } = gusset;
  const field = (key: 'thickness' | 'relief') => ({
    value: gusset[key],
    ...jobEdit<number>(STEP, (job, mm) => updateGusset(job, id, { [key]: mm })),
  });
  return (
    <section className="gusset" aria-label={shownName(gusset.name)}>
      <div className="fields fields-two">
        <TextField
          label="Name"
          value={gusset.name}
          {...jobEdit<string>('Rename a gusset', (job, name) => updateGusset(job, id, { name }))}
        />
        <JobSelect
          label="Sheet"
          value={gusset.kind}
          choices={KINDS}
          step={STEP}
          change={(job, kind) =>
            kind === 'flat' ? flattenGusset(job, id) : foldGusset(job, id, usualWidth(ways, job.lengthUnit))
          }
        />
        {ways.map((way, i) => (
          <LengthField
            key={`${way.towards} ${way.bar.id}`}
            label={`Along ${legInWords(derived, way, place)}`}
            size
            value={gusset.between[i]!.leg}
            {...jobEdit<number>(STEP, (job, mm) => setGussetLeg(job, id, i as 0 | 1, mm))}
          />
        ))}
        <LengthField label="Thickness" size {...field('thickness')} />
        {!isAcrossBend(gusset) && <LengthField label="Relief for the weld" {...field('relief')} />}
        {gusset.kind === 'bent' && <FoldFields gusset={gusset} />}
      </div>
      {gusset.kind === 'bent' && <p className="small">{K_IN_WORDS}</p>}
      <label className="gusset-sides">
        <input
          type="checkbox"
          checked={gusset.mirror}
          onChange={({ target }) =>
            jobDocument.getState().edit(STEP, (job) => updateGusset(job, id, { mirror: target.checked }))
          }
        />{' '}
        On both sides, where the same bars run there
      </label>
      <Comes set={set} />
      <Command quiet destroys={id} step={`Delete ${gusset.name}`} run={(job) => removeGusset(job, id)}>
        Delete {shownName(gusset.name)}
      </Command>
    </section>
  );
}

const KINDS: readonly { value: Gusset['kind']; label: string }[] = [
  { value: 'flat', label: 'flat' },
  { value: 'bent', label: 'folded' },
];

/** Of the thinner tube's diameter, in whole steps of the tape, mm: a torch comes to both edges of each face (ours). */
const USUAL_WIDTH = 0.75;
const WIDTH_STEP: Readonly<Record<LengthUnit, number>> = { mm: 1, in: MM_PER_INCH / 8 };
function usualWidth(ways: SetGusset['ways'], unit: LengthUnit): number {
  const step = WIDTH_STEP[unit];
  return step * Math.round((USUAL_WIDTH * Math.min(...ways.map(({ bar }) => bar.section.outerDiameter))) / step);
}

function FoldFields({ gusset }: { gusset: BentGusset }): ReactNode {
  const { id, width, radius } = gusset;
  return (
    <>
      <LengthField
        label="Width over both faces"
        size
        value={width}
        {...jobEdit<number>(STEP, (job, mm) => setFold(job, id, { width: mm }))}
      />
      <LengthField
        label="Inside radius of the fold"
        size
        value={radius}
        {...jobEdit<number>(STEP, (job, mm) => setFold(job, id, { radius: mm }))}
      />
      <NumberField
        label="K of the fold"
        least={0}
        greatest={0.5}
        step={0.01}
        value={Number(foldFibre(gusset).toFixed(3))}
        {...jobEdit<number>(STEP, (job, kFactor) => setFold(job, id, { kFactor }))}
      />
    </>
  );
}

/** What it comes to, drawn; or why it comes to nothing. */
function Comes({ set: { gusset, made, ways } }: { readonly set: SetGusset }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const unit = derived.job.lengthUnit;
  if (!isMade(made)) {
    const why = whyNoGusset(made, unit, (bar) => tubeName(derived, bar));
    return (
      <p className="entry-note entry-note-refused" role="status">
        <span aria-hidden="true">▲ </span>
        {capital(why)}
      </p>
    );
  }
  const count = gussetsOf(derived).filter((each) => each.gusset === gusset && isMade(each.made)).length;
  const fold = foldInWords(gusset, made.sheet.bends, unit);
  return (
    <>
      <Drawn {...sheetPicture(made.sheet)} scale={3} label={`${shownName(gusset.name)}, drawn flat`} />
      <p className="small">
        {gussetsCut(count, gusset, unit)} {massInWords(made.sheet.mass, unit)} each.
        {count > 1 && ' One is for the other side of the car.'} {legsInWords(gusset)}{' '}
        {edgesInWords(gusset, ways, (bar) => tubeName(derived, bar))}
        {fold !== null && ` ${fold}`}
      </p>
    </>
  );
}

/** From where to where a leg is measured: a tape laid from the node would find another length. */
function legsInWords(gusset: Gusset): string {
  const { kind, relief } = gusset;
  const corner = kind === 'flat' ? "the sheet's corner" : 'the corner of a face';
  const whole = relief > 0 ? `${corner} as it was before the relief was cut` : `${corner} between the tubes`;
  const from = isAcrossBend(gusset) ? 'where its two straight edges would meet if they ran on' : whole;
  const to = kind === 'flat' ? 'the edge that touches no tube' : 'the outside of the fold';
  return `Each leg is measured along the tube, from ${from} to ${to}.`;
}

/** mm of the drawing, the longer way. */
const ROOM = 60;

function sheetPicture(sheet: Sheet): Picture {
  const [[left, right], [bottom, top]] = extentOf(sheet.edges);
  const scale = ROOM / Math.max(right - left, top - bottom);
  const marks = stretched(moved(sheetMarks(sheet), -left, -bottom), scale, scale, 0, 0);
  return { width: scale * (right - left), height: scale * (top - bottom), marks };
}
