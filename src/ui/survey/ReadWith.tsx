/** What the next readings are taken with: an instrument of the shop record that reads them, the last one that was chosen for such readings. */
import type { ReactNode } from 'react';
import type { ReadWith as ReadWithInstrument } from '../../core/edit/measurements.ts';
import type { MeasurementKind } from '../../core/job/kinds/measurement.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Instrument } from '../../core/shop/kinds/instrument.ts';
import { useShop } from '../../store/page.ts';
import { SelectField } from '../fields/Fields.tsx';
import { useKept } from '../kit/kept.ts';

/** By kind of reading the name of the instrument. */
type Chosen = Readonly<Record<string, string>>;

const readChosen = (kept: unknown): Chosen =>
  typeof kept === 'object' && kept !== null && Object.values(kept).every((name) => typeof name === 'string')
    ? (kept as Chosen)
    : {};

const KEPT = 'instruments';

/** The one chosen for readings of each kind; undefined: the usual deviation of the kind. */
export function useInstruments(): (kind: MeasurementKind) => Instrument | undefined {
  const instruments = useShop((state) => state.shop.instruments);
  const [chosen] = useKept(KEPT, readChosen);
  return (kind) => instruments.find(({ name, reads }) => name === chosen[kind] && reads.includes(kind));
}

export const useInstrument = (kind: MeasurementKind): Instrument | undefined => useInstruments()(kind);

/** As a reading keeps it. */
export const readWith = (instrument: Instrument | undefined): ReadWithInstrument => ({
  instrument: instrument?.name,
  sigma: instrument?.sigma,
});

/** Nothing where the shop has no instrument that reads them. */
export function ReadWith({ kind }: { kind: MeasurementKind }): ReactNode {
  const instruments = useShop((state) => state.shop.instruments);
  const [chosen, setChosen] = useKept(KEPT, readChosen);
  const instrument = useInstrument(kind);
  const able = instruments.filter(({ reads }) => reads.includes(kind));
  if (able.length === 0) return null;
  return (
    <SelectField
      label="Read with"
      value={instrument?.name ?? ''}
      choices={[
        { value: '', label: 'not said: as tapes and levels usually are' },
        ...able.map(({ name }) => ({ value: name, label: shownName(name) })),
      ]}
      // One that reads more kinds is chosen for them all.
      onChoose={(name) => {
        const reads = able.find((each) => each.name === name)?.reads ?? [kind];
        setChosen({ ...chosen, ...Object.fromEntries(reads.map((each) => [each, name])) });
      }}
    />
  );
}
