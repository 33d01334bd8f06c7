/** What puts a driver or a box into the car. */
import { useState, type ReactNode } from 'react';
import { addBox, addDriver, addGuessedDriver, type BoxUse } from '../../core/edit/envelopes.ts';
import { frontOfHoop } from '../../core/fitting/front-of-hoop.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import { useDocument } from '../../store/page.ts';
import { SelectField } from '../fields/Fields.tsx';
import { Command } from '../kit/Command.tsx';
import { measuredPlaces } from '../kit/names.ts';

export const AddRoom = (): ReactNode => (
  <>
    <NewDriver />
    <NewBox />
  </>
);

function NewDriver(): ReactNode {
  const job = useDocument((state) => state.job);
  const derived = useDocument((state) => state.derived);
  const [chosen, setChosen] = useState<string | null>(null);
  const count = job.envelopes.filter(({ kind }) => kind === 'driver').length;
  const name = ['Driver', 'Co-driver'][count] ?? `Driver ${count + 1}`;
  const top = chosen ?? toldTop(job);
  return (
    <div className="card">
      <SelectField
        label={`Top of the ${name.toLowerCase()}’s helmet`}
        value={top}
        choices={[{ value: '', label: 'not measured yet: guess it' }, ...measuredPlaces(job, undefined)]}
        onChoose={setChosen}
      />
      <Command
        step={`Add ${name}`}
        run={(before) =>
          top === ''
            ? addGuessedDriver(before, name, `${name}: helmet top`, frontOfHoop(derived))
            : addDriver(before, name, top)
        }
        onDone={() => setChosen(null)}
      >
        {['Add a driver', 'Add a co-driver'][count] ?? 'Add another driver'}
      </Command>
    </div>
  );
}

/** The first point whose name says that it is a helmet's and that no driver has; '' where there is none. */
function toldTop(job: Job): string {
  const taken = new Set(job.envelopes.map((envelope) => (envelope.kind === 'driver' ? envelope.helmetTop : null)));
  return job.points.find(({ id, name }) => /helmet|head top|top of head/iu.test(name) && !taken.has(id))?.id ?? '';
}

const USES: readonly (readonly [BoxUse, string])[] = [
  ['head', 'Head'],
  ['wheel', 'Wheel and hands'],
  ['knees', 'Knees'],
  ['door', 'Closed door'],
  ['sight', 'Sight line'],
];

function NewBox(): ReactNode {
  const [isOpen, setOpen] = useState(false);
  const names = useDocument((state) => state.job.envelopes);
  return (
    <>
      <button type="button" className="press" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        Add a box
      </button>
      {isOpen && (
        <div className="card">
          <p className="small">
            What is it for? Each begins with a size of our own invention, beside the first driver’s helmet if there is
            one: put place, size and gap right on the car.
          </p>
          <div className="row">
            {USES.map(([use, label]) => {
              const name = nameFor(label, names);
              return (
                <Command
                  key={use}
                  quiet
                  step={`Add ${name}`}
                  run={(job) => addBox(job, use, name)}
                  onDone={() => setOpen(false)}
                >
                  {label}
                </Command>
              );
            })}
          </div>
        </div>
      )}
    </>
  );
}

/** A name that no other box has: Knees, Knees 2 ... */
function nameFor(label: string, envelopes: Job['envelopes']): string {
  const taken = new Set(envelopes.map(({ name }) => shownName(name)));
  let [name, number] = [label, 1];
  while (taken.has(name)) name = `${label} ${(number += 1)}`;
  return name;
}
