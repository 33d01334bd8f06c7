/** What the car weighs, as a rule book goes by it; nothing where nobody has said. */
import type { ReactNode } from 'react';
import { setCarMass } from '../../core/edit/rules.ts';
import { massUnit } from '../../core/units/mass.ts';
import { useDocument } from '../../store/page.ts';
import { EntryField } from './EntryField.tsx';
import { jobEdit } from './jobEdit.ts';
import { orNothing } from './kinds.ts';
import { massKind } from './mass.ts';

export function MassField(): ReactNode {
  const unit = useDocument((state) => state.job.lengthUnit);
  const mass = useDocument((state) => state.job.carMass ?? null);
  const { commit } = jobEdit<number | null>('Mass of the car', (job, value) => setCarMass(job, value ?? undefined));
  return (
    <EntryField
      label="Mass of the car"
      unit={massUnit(unit)}
      kind={orNothing(massKind(unit))}
      value={mass}
      numeric
      commit={commit}
    />
  );
}
